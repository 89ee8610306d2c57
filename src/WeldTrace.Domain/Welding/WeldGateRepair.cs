using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Welding;

// What the decision on a finding says before its repair is welded; every other rule is the same as for a pass.
public static partial class WeldGate
{
    private const string RepairSource = "NASA-STD-5006A 4.11, GWR 116-119";

    private static RuleVerdict RepairOrder(WeldGateFacts facts, Finding repair)
    {
        var vessel = facts.Vessel;
        var open = facts
            .Findings.Where(f => f.State == FindingState.Open)
            .Select(f => f.Label)
            .Order()
            .ToList();
        var running = facts.Runs.FirstOrDefault(r => !r.IsSealed);
        var against =
            vessel.IsFinal
                ? $"{vessel.Serial} is {Vessel.StateWord(vessel.State)}; nothing more is welded on it."
            : !repair.AwaitsRepair || repair.PlannedRepair is not { Place: not null } plan
                ? $"{repair.Label} asks for no repair weld now; it is {Finding.StateWord(repair.State)}."
            : open.Count > 0
                ? $"Open findings hold the vessel: {string.Join(", ", open)}. An inspector must decide on them before anything is welded."
            : running is not null
                ? $"The run of step {running.StepSequence} isn't signed yet; finish it first."
            : plan.Attempt > Finding.AttemptsWithoutBoard && repair.Board is null
                ? $"It would be attempt {plan.Attempt} at this place; the material review board decides first."
            : null;
        return Verdict(
            "F1",
            "Repair decided, no open finding",
            against,
            $"{repair.Label} asks for this repair, attempt {repair.PlannedRepair?.Attempt} at the place, and no open finding holds the vessel.",
            RepairSource
        );
    }

    private static RuleVerdict RepairProcedure(WeldGateFacts facts, RepairPlan plan) =>
        Verdict(
            "F2",
            "Released procedure of the decision",
            facts.Revision is { } revision
            && revision.Id == plan.Procedure.Id
            && revision.State == Procedures.ProcedureState.Released
                ? null
                : $"{plan.Procedure.Label}, which the decision names, is not released any more; have the finding decided anew.",
            $"{plan.Procedure.Label} is released and is the one the decision names.",
            RepairSource
        );
}
