using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Qualification;

/// <summary>What is about to be welded, as far as the qualified range must cover it.</summary>
/// <param name="Joint">Joint of the drawing.</param>
/// <param name="Design">Design with its material and diameter.</param>
/// <param name="Machine">Machine chosen; null while none is.</param>
/// <param name="Tool">Tool chosen; null while none is.</param>
public sealed record RangeTask(Joint Joint, DesignContent Design, Machine? Machine, Tool? Tool);

/// <summary>Floor rule F3: whether the joint lies inside the range that the procedure's qualification covers.</summary>
public static class QualifiedRangeRules
{
    private const string Title = "Joint inside the qualified range";
    private const string Source =
        "NASA-STD-5006A w/Change 2 GWR 46; ship-classification rules, July 2022, Ch. 12 6.3.7";
    private const double DiameterResolutionMillimetres = 0.01;

    /// <summary>Judges floor rule F3.</summary>
    /// <param name="task">What is to be welded.</param>
    /// <param name="revision">Procedure revision chosen; null when none is released.</param>
    public static RuleVerdict ForWelding(RangeTask task, ProcedureRevision? revision)
    {
        ArgumentNullException.ThrowIfNull(task);
        var against = revision switch
        {
            null => ["There is no procedure to compare the joint with."],
            { Qualified: null } =>
            [
                $"{revision.Label} has no qualification record; make a new revision from it and qualify that.",
            ],
            { Qualified: { } qualified } => Against(task, qualified.Range, revision).ToList(),
        };
        return against.Count > 0
            ? new("F3", Title, RuleStanding.Forbids, string.Join(" ", against), Source)
            : new("F3", Title, RuleStanding.Holds, Holds(task, revision!), Source);
    }

    private static IEnumerable<string> Against(
        RangeTask task,
        QualificationRange range,
        ProcedureRevision revision
    )
    {
        var (joint, design) = (task.Joint, task.Design);
        if (!range.CoversMaterial(design.Alloy, design.Temper))
        {
            yield return $"The vessel is {design.Alloy}-{design.Temper}; {revision.Label} is qualified for {RangeWords.Materials(range)}.";
        }

        if (!range.CoversThickness(joint.Thickness))
        {
            yield return FormattableString.Invariant(
                $"Joint {joint.Code} is {joint.Thickness.Millimetres:0.###} mm; {revision.Label} is qualified for {RangeWords.Of(range.Thickness)}."
            );
        }

        if (!range.JointType.Equals(joint.JointType, StringComparison.OrdinalIgnoreCase))
        {
            yield return $"Joint {joint.Code} is a {joint.JointType} joint; {revision.Label} is qualified for {range.JointType} joints.";
        }

        if (task.Tool is { } tool && tool.DesignId != range.ToolDesignId)
        {
            yield return $"{tool.Mark} is of design {tool.DesignLabel}; {revision.Label} is qualified with {range.ToolDesignLabel}.";
        }

        foreach (var against in AgainstMachine(task.Machine, range, revision))
        {
            yield return against;
        }

        if (AgainstDiameter(design, revision) is { } diameter)
        {
            yield return diameter;
        }
    }

    private static IEnumerable<string> AgainstMachine(
        Machine? machine,
        QualificationRange range,
        ProcedureRevision revision
    )
    {
        if (machine is null)
        {
            yield break;
        }

        if (
            range.Tested("Control mode") is { } mode
            && !mode.Equals(machine.ControlMode, StringComparison.OrdinalIgnoreCase)
        )
        {
            yield return $"{machine.Name} has {machine.ControlMode}; {revision.Label} is qualified under {mode}.";
        }

        if (revision.Content.DetailsOrNone.Machine is { } named && named.Id != machine.Id)
        {
            yield return $"{revision.Label} names {named.Label}, not {machine.Name}.";
        }
    }

    private static string? AgainstDiameter(DesignContent design, ProcedureRevision revision)
    {
        if (revision.Content.DetailsOrNone.OuterDiameter is not { } tested)
        {
            return null;
        }

        var outer = design.InnerDiameter + (design.WallThickness * 2);
        return Math.Abs(outer.Millimetres - tested.Millimetres) <= DiameterResolutionMillimetres
            ? null
            : FormattableString.Invariant(
                $"The vessel has an outer diameter of {outer.Millimetres:0.##} mm; {revision.Label} is qualified for {tested.Millimetres:0.##} mm."
            );
    }

    private static string Holds(RangeTask task, ProcedureRevision revision) =>
        FormattableString.Invariant(
            $"{task.Joint.Code}: {task.Design.Alloy}-{task.Design.Temper}, {task.Joint.Thickness.Millimetres:0.###} mm, {task.Joint.JointType}; inside the range of {revision.Qualified!.Number}{(revision.Qualified.Range.RuleSet.WasChecked ? "" : " (rule set not checked against an own copy)")}."
        );
}
