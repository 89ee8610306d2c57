using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Tooling;

/// <summary>What a tool is about to do.</summary>
/// <param name="Path">Path of the pass; above zero.</param>
/// <param name="VesselSerial">Vessel or test piece.</param>
/// <param name="JointCode">Joint.</param>
public sealed record ToolTask(Length Path, string VesselSerial, string JointCode);

/// <summary>Floor rule F6: a tool of the procedure's design, in service, clean, inspected in time, with enough life left.</summary>
public static class ToolRules
{
    internal const string CleanSource = "ISO 25239-5:2020 4.6.2; NASA-STD-5006A GWR 42";

    private const string Source = "NASA-STD-5006A GWR 38-42; ISO 25239-5:2020 4.6.1, 4.6.2";

    /// <summary>Judges the rule.</summary>
    /// <param name="tool">Tool chosen; null when none is.</param>
    /// <param name="design">Design of that tool; null when no tool is chosen.</param>
    /// <param name="procedure">Content of the procedure; null when there is none.</param>
    /// <param name="task">What is to be welded.</param>
    /// <param name="today">Day at the site.</param>
    public static RuleVerdict ForWelding(
        Tool? tool,
        ToolDesign? design,
        ProcedureContent? procedure,
        ToolTask task,
        DateOnly today
    )
    {
        ArgumentNullException.ThrowIfNull(task);
        var against =
            tool is null || design is null
                ? "No tool is chosen; scan or choose one."
                : AgainstUse(tool, procedure, task) ?? AgainstUpkeep(tool, design, task, today);
        return new(
            "F6",
            "Tool, its inspections and its life",
            against is null ? RuleStanding.Holds : RuleStanding.Forbids,
            against
                ?? FormattableString.Invariant(
                    $"{tool!.Mark} is in service and inspected in time, with {tool.Remaining.Metres:0.0} m left; this pass needs {task.Path.Metres:0.000} m."
                ),
            Source
        );
    }

    /// <summary>What is left until the next wear inspection is due; null when the design counts no metres.</summary>
    public static Length? LeftToInspection(Tool tool, ToolDesign design)
    {
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(design);
        var last = tool.LatestForWear?.AtUse ?? Length.Zero;
        return last + design.Upkeep?.InspectEvery - tool.Used;
    }

    /// <summary>Last day on which the next wear inspection is in time; null when the design counts no days, or before the first.</summary>
    public static DateOnly? InspectionDueOn(Tool tool, ToolDesign design)
    {
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(design);
        return design.Upkeep?.InspectEveryDays is { } days
            ? tool.LatestForWear?.On.AddDays(days)
            : null;
    }

    private static string? AgainstUse(Tool tool, ProcedureContent? procedure, ToolTask task) =>
        tool switch
        {
            _ when procedure is not null && tool.DesignId != procedure.ToolDesignId =>
                $"{tool.Mark} is of design {tool.DesignLabel}; the procedure asks for {procedure.ToolDesignLabel}.",
            { State: not ToolState.InService } =>
                $"{tool.Mark} is {Tool.StateWord(tool.State)}{(tool.HeldBecause is { } why ? $" ({why.TrimEnd('.')})" : "")}; it must be in service.",
            _ when IsShort(tool.Remaining, task.Path) => FormattableString.Invariant(
                $"{tool.Mark} has {tool.Remaining.Metres:0.000} m left, this pass needs {task.Path.Metres:0.000} m; take another tool."
            ),
            _ => null,
        };

    private static string? AgainstUpkeep(
        Tool tool,
        ToolDesign design,
        ToolTask task,
        DateOnly today
    ) =>
        tool switch
        {
            _ when design.Upkeep is null =>
                $"{design.Label} states no wear limits and no inspection interval; the engineer lays them down on the design's page.",
            { HasFirstUseCheck: false } =>
                $"{tool.Mark} has no first-use check; record on its page that it is clean and as drawn.",
            _ when LeftToInspection(tool, design) is { } left && IsShort(left, task.Path) =>
                FormattableString.Invariant(
                    $"{tool.Mark} is due for its wear inspection after {Math.Max(0, left.Metres):0.000} m, this pass needs {task.Path.Metres:0.000} m; inspect it by {design.Upkeep.InspectionProcedure} first."
                ),
            _ when InspectionDueOn(tool, design) < today =>
                $"The wear inspection of {tool.Mark} was due by {InspectionDueOn(tool, design):yyyy-MM-dd}; inspect it by {design.Upkeep.InspectionProcedure} first.",
            _ when IsOnAnotherJoint(tool, task) && !tool.IsCleanedSinceLastUse =>
                $"{tool.Mark} last welded {LastJoint(tool)}; clean and look at it before another joint, and record it on its page.",
            _ => null,
        };

    // Sums of metres differ in their last bits; a micrometre of weld decides nothing.
    private static bool IsShort(Length left, Length needed) =>
        needed - left > Length.FromMicrometres(1);

    private static string LastJoint(Tool tool) =>
        tool.Uses[^1] is { Basis: ChargeBasis.EarlierRecords }
            ? "before it was entered here"
            : $"{tool.Uses[^1].VesselSerial} {tool.Uses[^1].JointCode}".TrimEnd();

    private static bool IsOnAnotherJoint(Tool tool, ToolTask task) =>
        tool.Uses.Count > 0
        && (
            tool.Uses[^1].VesselSerial != task.VesselSerial
            || (tool.Uses[^1].JointCode is { } joint && joint != task.JointCode)
        );
}
