using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

/// <summary>Everything that the rules before a weld run look at.</summary>
/// <param name="Vessel">Vessel to be welded.</param>
/// <param name="Step">Step about to be begun.</param>
/// <param name="Design">Design of the vessel.</param>
/// <param name="Findings">Findings of the vessel.</param>
/// <param name="Runs">Earlier runs on the vessel.</param>
/// <param name="Revision">Procedure revision chosen; null when none is released.</param>
/// <param name="Tool">Tool chosen; null when none is.</param>
public sealed record WeldGateFacts(
    Vessel Vessel,
    RouteStep Step,
    VesselDesign Design,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<WeldRun> Runs,
    ProcedureRevision? Revision,
    Tool? Tool
)
{
    /// <summary>Joint of the step.</summary>
    public Joint Joint =>
        Design.Content.Joint(Step.JointCode)
        ?? throw new InvalidOperationException($"Step {Step.Sequence} names no joint.");

    /// <summary>Pass of the step.</summary>
    public PassPlan Pass =>
        Joint.Pass(Step.PassNumber ?? 0)
        ?? throw new InvalidOperationException($"Step {Step.Sequence} names no pass.");

    /// <summary>Planned path of the pass, overlap included.</summary>
    public Length PlannedPath => Pass.TrackRadius * ((2 * Math.PI) + Pass.Overlap.Radians);
}

/// <summary>The gate before a weld run: every rule that these records can judge, each with its reason.</summary>
public static class WeldGate
{
    /// <summary>Judges all rules; a run may start only when each holds.</summary>
    public static IReadOnlyList<RuleVerdict> Judge(WeldGateFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return
        [
            RouteOrder(facts),
            ReleasedProcedure(facts),
            JointInScope(facts),
            ToolAndLife(facts),
            EarlierPasses(facts),
        ];
    }

    private static RuleVerdict RouteOrder(WeldGateFacts facts)
    {
        var (vessel, step) = (facts.Vessel, facts.Step);
        var stopping = facts
            .Findings.Where(f => f.Stops(step.Sequence))
            .Select(f => f.Label)
            .Order()
            .ToList();
        var running = facts.Runs.FirstOrDefault(r => !r.IsSealed);
        var against =
            vessel.IsFinal
                ? $"{vessel.Serial} is {Vessel.StateWord(vessel.State)}; nothing more is welded on it."
            : stopping.Count > 0
                ? $"Open findings hold the vessel: {string.Join(", ", stopping)}. An inspector must decide and close them."
            : running is not null
                ? $"The run of step {running.StepSequence} isn't signed yet; finish it first."
            : vessel.NextStep is not { } next
                ? $"The route of {vessel.Serial} is done; nothing is left to weld."
            : next.Sequence < step.Sequence
                ? $"Step {next.Sequence} comes before step {step.Sequence}; do it first."
            : next.Sequence != step.Sequence
                ? $"Step {step.Sequence} is {RouteStep.StateWord(step.State)}; step {next.Sequence} comes next."
            : step.State != StepState.Ready
                ? $"Step {step.Sequence} is {RouteStep.StateWord(step.State)}; decide on its finding before it is welded again."
            : null;
        return Verdict(
            "F1",
            "Next step, no open finding",
            against,
            $"Step {step.Sequence} is the next on the route and no finding holds the vessel.",
            "21 CFR 11.10(f) as a model; NASA-STD-5006A GWR 81-83"
        );
    }

    private static RuleVerdict ReleasedProcedure(WeldGateFacts facts)
    {
        var wanted = facts.Joint.ProcedureNumber;
        var against = facts.Revision switch
        {
            null => $"Procedure {wanted} has no released revision; the engineer must release one.",
            { State: not ProcedureState.Released } r =>
                $"{r.Label} is {ProcedureRevision.StateWord(r.State)}; production needs a released revision.",
            { } r when r.Number != wanted =>
                $"The drawing names procedure {wanted}, not {r.Number}; choose the released revision of {wanted}.",
            _ => null,
        };
        return Verdict(
            "F2",
            "Released procedure of the drawing",
            against,
            $"{facts.Revision?.Label} is released and is the one the drawing names.",
            "NASA-STD-5006A 4.7.5, GWR 58, 80; ISO 25239-5:2020 4.10"
        );
    }

    private static RuleVerdict JointInScope(WeldGateFacts facts)
    {
        var (joint, design, content) = (facts.Joint, facts.Design.Content, facts.Revision?.Content);
        var against =
            content is null ? "There is no procedure to compare the joint with."
            : content.Alloy != design.Alloy || content.Temper != design.Temper
                ? $"The procedure is for {content.Alloy}-{content.Temper}, the vessel is {design.Alloy}-{design.Temper}."
            : Math.Abs(content.Thickness.Millimetres - joint.Thickness.Millimetres)
            > ThicknessResolution.Millimetres
                ? FormattableString.Invariant(
                    $"The procedure is for {content.Thickness.Millimetres:0.0#} mm, joint {joint.Code} is {joint.Thickness.Millimetres:0.0#} mm."
                )
            : !string.Equals(content.JointType, joint.JointType, StringComparison.OrdinalIgnoreCase)
                ? $"The procedure is for a {content.JointType} joint, {joint.Code} is a {joint.JointType} joint."
            : null;
        return Verdict(
            "F3",
            "Joint as the procedure says",
            against,
            FormattableString.Invariant(
                $"{joint.Code}: {design.Alloy}-{design.Temper}, {joint.Thickness.Millimetres:0.0#} mm, {joint.JointType}, as in the procedure."
            ),
            "Ship-classification rules, July 2022, Ch. 12 6.3.7 (exact alloy, temper, thickness, joint type)"
        );
    }

    private static RuleVerdict ToolAndLife(WeldGateFacts facts)
    {
        var needed = facts.PlannedPath;
        var against = facts.Tool switch
        {
            null => "No tool is chosen; scan or choose one.",
            { } t when facts.Revision is { } r && t.DesignId != r.Content.ToolDesignId =>
                $"{t.Mark} is of design {t.DesignLabel}; the procedure asks for {r.Content.ToolDesignLabel}.",
            { State: not ToolState.InService } t =>
                $"{t.Mark} is {Tool.StateWord(t.State)}; it must be in service.",
            { } t when t.Remaining < needed => FormattableString.Invariant(
                $"{t.Mark} has {t.Remaining.Metres:0.000} m left, this pass needs {needed.Metres:0.000} m; take another tool."
            ),
            _ => null,
        };
        return Verdict(
            "F6",
            "Tool design and remaining life",
            against,
            FormattableString.Invariant(
                $"{facts.Tool?.Mark} is in service with {facts.Tool?.Remaining.Metres:0.0} m left; this pass needs {needed.Metres:0.000} m."
            ),
            "NASA-STD-5006A GWR 38-41; ISO 25239-5:2020 4.6"
        );
    }

    private static RuleVerdict EarlierPasses(WeldGateFacts facts)
    {
        var missing = facts
            .Joint.Passes.Where(p => p.Number < facts.Pass.Number)
            .Where(p =>
                !facts.Runs.Any(r =>
                    r.JointCode == facts.Joint.Code
                    && r.PassNumber == p.Number
                    && r.IsSealed
                    && r.Travel == p.Travel
                )
            )
            .Select(p => p.Number)
            .ToList();
        var against =
            missing.Count > 0
                ? $"Pass {string.Join(", ", missing)} of {facts.Joint.Code} has no signed run in the planned direction."
                : null;
        return Verdict(
            "F9",
            "Earlier passes of this joint",
            against,
            facts.Pass.Number == 1
                ? "This is the first pass of the joint."
                : "The earlier passes are welded in the planned direction.",
            "Sequence of the procedure; ISO 25239-5:2020 4.5"
        );
    }

    private static Length ThicknessResolution => Length.FromMicrometres(1);

    private static RuleVerdict Verdict(
        string id,
        string title,
        string? against,
        string holds,
        string source
    ) =>
        against is null
            ? new(id, title, RuleStanding.Holds, holds, source)
            : new(id, title, RuleStanding.Forbids, against, source);
}
