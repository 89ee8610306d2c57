using WeldTrace.Documents.Drawings;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Features.Findings.ShowFinding;

/// <summary>The place of a finding as the seam drawing wants it.</summary>
internal static class FindingPlace
{
    /// <summary>The seam with the finding marked; null when the finding has no angle on a known pass.</summary>
    public static SeamPlan? Of(Finding finding, DesignContent content)
    {
        if (
            finding.Place is not { Start: { } start } place
            || content.Joint(place.JointCode) is not { } joint
        )
        {
            return null;
        }

        var pass = place.PassNumber is { } number ? joint.Pass(number) : joint.Passes[0];
        return pass is null
            ? null
            : new SeamPlan
            {
                TrackRadius = pass.TrackRadius,
                Travel = pass.Travel,
                // The drawing counts clockwise from the mark, the design counter-clockwise.
                Start = Angle.FromDegrees(-pass.Start.Degrees),
                Overlap = pass.Overlap,
                Excursions =
                [
                    new SeamExcursion(
                        "1",
                        finding.Label,
                        Path(pass, start),
                        Path(pass, place.End ?? start)
                    ),
                ],
            };
    }

    private static Length Path(Domain.VesselDesigns.PassPlan pass, Angle angle) =>
        pass.TrackRadius * angle.Radians;
}
