using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Traveler;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Tests.Samples;

/// <summary>Two concentric passes in opposite travel directions with a clockwise spindle.</summary>
internal static class SampleJoints
{
    public static readonly PassPlan Plan = new(
        "joint J1",
        [
            Track("1", 60, RotationSense.Clockwise, WeldSide.Retreating, WeldSide.Advancing),
            Track("2", 75, RotationSense.CounterClockwise, WeldSide.Advancing, WeldSide.Retreating),
        ]
    )
    {
        JointLineRadius = Length.FromMillimetres(67.5),
    };

    public static JointSheet Joint(string name, string title) =>
        new()
        {
            Name = $"{name}: {title}",
            Particulars =
            [
                new("Joint type", "lap-butt, circular"),
                new("Thickness", "5.0 mm"),
                new("Joint line radius", "67.50 mm"),
                new("Procedure", "WPS 12 revision C"),
            ],
            Plan = Plan,
            Passes = [Figures("1", 397.935, 20.94, 149), Figures("2", 497.419, 26.18, 149)],
            Remarks =
            [
                "Pass 1 shows its advancing side to pass 2, and pass 2 its advancing side to pass 1. The shoulder tracks overlap by 3.00 mm.",
            ],
        };

    public static PassTrack Track(
        string name,
        double radius,
        RotationSense travel,
        WeldSide inner,
        WeldSide outer,
        double shoulder = 18
    ) =>
        new()
        {
            Name = name,
            TrackRadius = Length.FromMillimetres(radius),
            ShoulderDiameter = Length.FromMillimetres(shoulder),
            PinDiameter = Length.FromMillimetres(6),
            Spindle = RotationSense.Clockwise,
            Travel = travel,
            InnerSide = inner,
            OuterSide = outer,
            Start = Angle.FromDegrees(0),
            Overlap = Angle.FromDegrees(20),
        };

    private static PassFigures Figures(string name, double path, double overlap, int seconds) =>
        new()
        {
            Name = name,
            PathLength = Length.FromMillimetres(path),
            OverlapLength = Length.FromMillimetres(overlap),
            RunTime = TimeSpan.FromSeconds(seconds),
            SpindleSpeed = RotationSpeed.FromRevolutionsPerMinute(800),
            TravelSpeed = Speed.FromMillimetresPerMinute(200),
        };
}
