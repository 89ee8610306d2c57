using WeldTrace.Documents;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Paths;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Traveler;

internal static class JointMapping
{
    /// <summary>The joint with the set points of the procedure it was welded by, else of the released one; null when there is neither.</summary>
    public static JointSheet? Map(TravelerSource source, Joint joint)
    {
        var usedId = source
            .History.Runs.LastOrDefault(r => r.JointCode == joint.Code)
            ?.ProcedureRevisionId;
        var procedure =
            usedId is { } id && source.Procedures.TryGetValue(id, out var used)
                ? used
                : source.Procedures.Values.FirstOrDefault(p => p.Number == joint.ProcedureNumber);
        var tool = procedure is null
            ? null
            : source.ToolDesigns.GetValueOrDefault(procedure.Content.ToolDesignId);
        if (procedure is null || tool is null)
        {
            return null;
        }

        var layouts = joint
            .Passes.Select(p =>
                (Plan: p, Computed: PassLayout.Compute(p, procedure.Content, tool.Geometry))
            )
            .Where(p => !p.Computed.IsRefused)
            .Select(p => (p.Plan, Layout: p.Computed.Value))
            .ToList();
        return new JointSheet
        {
            Name = $"{joint.Code}: {joint.Name}",
            Particulars =
            [
                new LabelledValue("Joint type", joint.JointType),
                new LabelledValue("Thickness", Texts.Of(joint.Thickness, source.Site.Units)),
                new LabelledValue("Procedure", procedure.Label),
                new LabelledValue("Tool design", tool.Label),
            ],
            Plan = new Documents.Drawings.PassPlan(
                joint.Code,
                [.. layouts.Select(l => PassTracks.Of(l.Plan, l.Layout))]
            ),
            Passes = [.. layouts.Select(l => Figures(l.Layout))],
            Remarks =
            [
                .. layouts
                    .Zip(layouts.Skip(1))
                    .Select(pair =>
                        ConcentricPairs.Statement(pair.First.Layout, pair.Second.Layout)
                    ),
            ],
        };
    }

    private static PassFigures Figures(CircularPassLayout layout) =>
        new()
        {
            Name = PassTracks.NameOf(layout.Pass.Number),
            PathLength = layout.PathLength,
            OverlapLength = layout.OverlapLength,
            RunTime = layout.RunTime,
            SpindleSpeed = layout.Pass.SpindleSpeed,
            TravelSpeed = layout.Pass.TravelSpeed,
        };
}
