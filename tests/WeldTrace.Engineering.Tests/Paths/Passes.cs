using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.Paths;

internal static class Passes
{
    public static CircularPass Usual { get; } =
        new()
        {
            Number = 1,
            TrackRadius = Length.FromMillimetres(75),
            OverlapAngle = Angle.FromDegrees(20),
            SpindleSense = RotationSense.Clockwise,
            TravelSense = RotationSense.Clockwise,
            TravelSpeed = Speed.FromMillimetresPerMinute(200),
            SpindleSpeed = RotationSpeed.FromRevolutionsPerMinute(800),
            PlungeDepth = Length.FromMillimetres(5.9),
            PlungeRate = Speed.FromMillimetresPerMinute(15),
            RetractDistance = Length.FromMillimetres(10),
            RetractRate = Speed.FromMillimetresPerMinute(300),
            ShoulderDiameter = Length.FromMillimetres(18),
            PinDiameter = Length.FromMillimetres(6),
        };

    public static CircularPassLayout Layout(CircularPass pass) =>
        CircularPassLayout.Compute(pass).Value;
}
