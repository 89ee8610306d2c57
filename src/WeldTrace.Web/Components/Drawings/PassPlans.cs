using WeldTrace.Documents.Drawings;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Paths;
using DrawnPlan = WeldTrace.Documents.Drawings.PassPlan;
using Pass = WeldTrace.Domain.VesselDesigns.PassPlan;

namespace WeldTrace.Web.Components.Drawings;

/// <summary>Joints of a design as they are drawn, on screen and on paper.</summary>
public static class PassPlans
{
    /// <summary>The joint with some or all of its passes.</summary>
    /// <param name="joint">Joint of the design.</param>
    /// <param name="passes">Passes to draw.</param>
    /// <param name="spindle">Sense of the spindle, as the procedure says.</param>
    /// <param name="tool">Tool design of the procedure.</param>
    public static DrawnPlan Of(
        Joint joint,
        IEnumerable<Pass> passes,
        RotationSense spindle,
        ToolGeometry tool
    )
    {
        ArgumentNullException.ThrowIfNull(joint);
        ArgumentNullException.ThrowIfNull(passes);
        ArgumentNullException.ThrowIfNull(tool);
        return new DrawnPlan(
            $"{joint.Code}, {joint.Name}",
            [.. passes.Select(pass => Track(pass, spindle, tool))]
        );
    }

    private static PassTrack Track(Pass pass, RotationSense spindle, ToolGeometry tool)
    {
        var isOuter = AdvancingSide.OnCircle(spindle, pass.Travel) == CircleEdge.Outer;
        return new PassTrack
        {
            Name = FormattableString.Invariant($"{pass.Number}"),
            TrackRadius = pass.TrackRadius,
            ShoulderDiameter = tool.ShoulderDiameter,
            PinDiameter = tool.PinDiameter,
            Spindle = spindle,
            Travel = pass.Travel,
            OuterSide = isOuter ? WeldSide.Advancing : WeldSide.Retreating,
            InnerSide = isOuter ? WeldSide.Retreating : WeldSide.Advancing,
            Start = pass.Start,
            Overlap = pass.Overlap,
        };
    }
}
