using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

/// <summary>The gate before a weld run: every rule of the floor, each with its reason, the records behind it and the concession that waives it.</summary>
public static partial class WeldGate
{
    private static Length ThicknessResolution => Length.FromMicrometres(1);

    /// <summary>Judges all rules; a run may start only when none forbids it.</summary>
    public static IReadOnlyList<RuleVerdict> Judge(WeldGateFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var content = facts.Revision?.Content;
        IReadOnlyList<RuleVerdict?> verdicts =
        [
            facts.Repair is { } repair ? RepairOrder(facts, repair) : RouteOrder(facts),
            facts.Repair is { PlannedRepair: { } plan }
                ? RepairProcedure(facts, plan)
                : ReleasedProcedure(facts),
            JointInRange(facts),
            CertificateRules.ForWelding(
                facts.Welder.PrintedName,
                facts.Certificates,
                Task(facts),
                facts.Today
            ),
            EquipmentRules.ForWelding(facts.Machine, facts.Instruments, content, facts.Today),
            ToolRules.ForWelding(
                facts.Tool,
                facts.ToolDesign,
                content,
                new ToolTask(facts.PlannedPath, facts.Vessel.Serial, facts.Joint.Code),
                facts.Today
            ),
            MaterialRules.ForWelding(facts.Vessel, facts.Design.Content, content, facts.Material),
            PreparationRules.ForWelding(facts.Joint.Code, content, facts.Preparation, facts.Now),
            EarlierPasses(facts),
            LotRules.ForWelding(facts),
            ProductionTestDue.ForWelding(facts),
        ];
        return
        [
            .. verdicts
                .OfType<RuleVerdict>()
                .Select(v =>
                    Waived(v with { Behind = GateRecords.Behind(v.RuleId, facts) }, facts)
                ),
        ];
    }

    private static RuleVerdict Waived(RuleVerdict verdict, WeldGateFacts facts) =>
        verdict.Standing == RuleStanding.Forbids
        && ConcessionRules.Covering(verdict.RuleId, facts) is { } concession
            ? verdict with
            {
                Standing = RuleStanding.Waived,
                Concession = RecordName.Of(concession),
            }
            : verdict;

    private static OperatorTask Task(WeldGateFacts facts) =>
        new(
            facts.Joint.JointType,
            facts.Machine?.ControlMode,
            facts.Revision?.Content.DetailsOrNone.ToolType ?? ToolType.FixedProbe,
            facts.Design.Content.PedCategory
        );

    private static RuleVerdict JointInRange(WeldGateFacts facts)
    {
        var verdict = QualifiedRangeRules.ForWelding(
            new RangeTask(facts.Joint, facts.Design.Content, facts.Machine, facts.Tool),
            facts.Revision
        );
        return verdict.Standing == RuleStanding.Holds && AgainstJoint(facts) is { } against
            ? verdict with
            {
                Standing = RuleStanding.Forbids,
                Reason = against,
            }
            : verdict;
    }

    // A range may cover more than the procedure that is welded to.
    private static string? AgainstJoint(WeldGateFacts facts)
    {
        var (joint, design, content) = (facts.Joint, facts.Design.Content, facts.Revision!.Content);
        return content.Alloy != design.Alloy || content.Temper != design.Temper
                ? $"The procedure is for {content.Alloy}-{content.Temper}, the vessel is {design.Alloy}-{design.Temper}."
            : Math.Abs(content.Thickness.Millimetres - joint.Thickness.Millimetres)
            > ThicknessResolution.Millimetres
                ? FormattableString.Invariant(
                    $"The procedure is for {content.Thickness.Millimetres:0.0#} mm, joint {joint.Code} is {joint.Thickness.Millimetres:0.0#} mm."
                )
            : !string.Equals(content.JointType, joint.JointType, StringComparison.OrdinalIgnoreCase)
                ? $"The procedure is for a {content.JointType} joint, {joint.Code} is a {joint.JointType} joint."
            : null;
    }
}
