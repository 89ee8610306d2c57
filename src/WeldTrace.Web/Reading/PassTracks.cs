using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Web.Reading;

/// <summary>Computed passes as the plan drawing takes them, on screen and on paper.</summary>
public static class PassTracks
{
    public static string NameOf(int number) =>
        number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    public static PassTrack Of(Domain.VesselDesigns.PassPlan plan, CircularPassLayout layout)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(layout);
        return new PassTrack
        {
            Name = NameOf(plan.Number),
            TrackRadius = plan.TrackRadius,
            ShoulderDiameter = layout.Pass.ShoulderDiameter,
            PinDiameter = layout.Pass.PinDiameter,
            Spindle = layout.Pass.SpindleSense,
            Travel = plan.Travel,
            InnerSide = layout.SideAt(CircleEdge.Inner),
            OuterSide = layout.SideAt(CircleEdge.Outer),
            Start = plan.Start,
            Overlap = plan.Overlap,
        };
    }
}
