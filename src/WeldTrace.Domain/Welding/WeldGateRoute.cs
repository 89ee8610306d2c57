using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Welding;

// What the route, the procedure and the earlier passes say.
public static partial class WeldGate
{
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

    private static RuleVerdict EarlierPasses(WeldGateFacts facts)
    {
        var missing = facts
            .Joint.Passes.Where(p =>
                p.Number < facts.Pass.Number
                || (facts.Repair is not null && p.Number == facts.Pass.Number)
            )
            .Where(p =>
                !facts.Runs.Any(r =>
                    r.JointCode == facts.Joint.Code
                    && r.PassNumber == p.Number
                    && r.IsSealed
                    && r.Repair is null
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
            facts.Repair is not null
                    ? "The pass that is repaired is welded in the planned direction."
                : facts.Pass.Number == 1 ? "This is the first pass of the joint."
                : "The earlier passes are welded in the planned direction.",
            "Sequence of the procedure; ISO 25239-5:2020 4.5"
        );
    }

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
