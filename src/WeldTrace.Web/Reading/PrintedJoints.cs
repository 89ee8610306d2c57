using WeldTrace.Documents;
using WeldTrace.Documents.Traveler;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Paths;

namespace WeldTrace.Web.Reading;

/// <summary>A joint with its passes at the set points of a procedure, as documents print it.</summary>
public static class PrintedJoints
{
    public static JointSheet Of(
        Joint joint,
        ProcedureRevision procedure,
        ToolDesign tool,
        string name,
        UnitSystem units
    )
    {
        ArgumentNullException.ThrowIfNull(joint);
        ArgumentNullException.ThrowIfNull(procedure);
        ArgumentNullException.ThrowIfNull(tool);
        var layouts = joint
            .Passes.Select(p =>
                (Plan: p, Computed: PassLayout.Compute(p, procedure.Content, tool.Geometry))
            )
            .Where(p => !p.Computed.IsRefused)
            .Select(p => (p.Plan, Layout: p.Computed.Value))
            .ToList();
        return new JointSheet
        {
            Name = name,
            Particulars =
            [
                new LabelledValue("Joint type", joint.JointType),
                new LabelledValue("Thickness", Texts.Of(joint.Thickness, units)),
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
