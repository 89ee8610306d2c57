using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

// From the start at the machine to the end of the travel.
public sealed partial class WeldRun
{
    /// <summary>Starts a run when every rule holds.</summary>
    /// <param name="id">Identity made when the form was shown, so that sending it twice starts one run.</param>
    /// <param name="facts">What the rules look at; its welder starts the run, at its instant.</param>
    /// <param name="confirmedTravel">Travel sense that the operator confirmed.</param>
    /// <param name="confirmed">Checks before welding that the operator confirmed.</param>
    public static Outcome<WeldRun> Start(
        Guid id,
        WeldGateFacts facts,
        RotationSense confirmedTravel,
        IReadOnlyCollection<PreWeldItem> confirmed
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        var (actor, at) = (facts.Welder, facts.Now);
        var gate = WeldGate.Judge(facts);
        var asked = PreWeldChecks.Of(facts, gate);
        var checks = new Checks()
            .Role(actor, Role.Operator)
            .That(
                facts.Step.Kind == VesselDesigns.StepKind.Weld,
                "step",
                $"Step {facts.Step.Sequence} is no weld."
            )
            .That(
                confirmedTravel == facts.Pass.Travel,
                "F9",
                $"The drawing asks for {SenseWord(facts.Pass.Travel)} travel; set the machine so and confirm it.",
                nameof(Travel)
            )
            .Add(gate.Where(v => v.Standing == RuleStanding.Forbids).Select(v => v.ToRefusal()))
            .Add(PreWeldChecks.Missing(asked, confirmed));
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var run = Make(id, facts, gate, asked);
        run.Note(actor, at, "weld run started");
        if (facts.Repair is { } finding)
        {
            finding.BeginRepair(RecordName.Of(run), actor, at);
            facts.Vessel.BeginRepair(finding.Label, actor, at);
            return run;
        }

        var begun = facts.Vessel.BeginStep(facts.Step.Sequence, actor, at);
        if (!begun.IsAccepted)
        {
            return begun.Refusals.ToList();
        }

        return run;
    }

    /// <summary>Ends the run as planned; the whole planned path is charged to the tool until the log is in.</summary>
    public Outcome End(string? remark, Tool tool, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = CheckRunning(actor)
            .That(
                (remark?.Length ?? 0) <= LongestText,
                "remark",
                $"Keep the remark within {LongestText} characters.",
                nameof(EndNote)
            );
        if (checks.AllHold)
        {
            Finish(
                WeldRunState.Ended,
                string.IsNullOrWhiteSpace(remark) ? null : remark.Trim(),
                PlannedPath,
                ChargeBasis.PlannedPath,
                tool,
                actor,
                at
            );
            Note(actor, at, "weld run ended");
        }

        return checks.ToOutcome();
    }

    /// <summary>Ends the run before its planned path: charges what was travelled, fails the step and holds the vessel.</summary>
    /// <param name="travelled">Length travelled, as the operator states it; 0 to the planned path.</param>
    /// <param name="reason">What happened; 1 to 1000 characters.</param>
    /// <param name="vessel">Vessel.</param>
    /// <param name="tool">Tool.</param>
    /// <param name="actor">Operator.</param>
    /// <param name="at">UTC instant.</param>
    /// <returns>The finding that holds the joint.</returns>
    public Outcome<Finding> Interrupt(
        Length travelled,
        string reason,
        Vessel vessel,
        Tool tool,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = CheckRunning(actor)
            .Text(reason, LongestText, "Say what happened", nameof(EndNote))
            .That(
                travelled >= Length.Zero && travelled <= PlannedPath,
                "travelled",
                FormattableString.Invariant(
                    $"Give the length travelled, 0 to {PlannedPath.Millimetres:0} mm (the planned path)."
                ),
                nameof(Travelled)
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        Finish(
            WeldRunState.Interrupted,
            reason.Trim(),
            travelled,
            ChargeBasis.Stated,
            tool,
            actor,
            at
        );
        Note(actor, at, "weld run interrupted", reason.Trim());
        FailStepOf(vessel, actor, at);
        return OpenInterruption(vessel, actor, at);
    }

    private static WeldRun Make(
        Guid id,
        WeldGateFacts facts,
        IReadOnlyList<RuleVerdict> gate,
        IReadOnlyList<PreWeldCheck> asked
    ) =>
        new(id)
        {
            VesselId = facts.Vessel.Id,
            VesselSerial = facts.Vessel.Serial,
            StepSequence = facts.Step.Sequence,
            JointCode = facts.Joint.Code,
            PassNumber = facts.Pass.Number,
            Repair = facts.Repair is { PlannedRepair: { Place: { } place } plan } repaired
                ? new RunRepair(RecordName.Of(repaired), plan.Attempt, place.Start)
                : null,
            Travel = facts.Pass.Travel,
            PlannedPath = facts.PlannedPath,
            TrackRadius = facts.Pass.TrackRadius,
            ProcedureRevisionId = facts.Revision!.Id,
            ProcedureLabel = facts.Revision.Label,
            MachineId = facts.Machine!.Id,
            MachineName = facts.Machine.Name,
            ToolId = facts.Tool!.Id,
            ToolMark = facts.Tool.Mark,
            OperatorId = facts.Welder.PersonId,
            OperatorName = facts.Welder.PrintedName,
            Gate = gate,
            Checks = asked,
            StartedAt = facts.Now,
        };

    // The step of the pass was welded before it was repaired, and stays as it is.
    private void FailStepOf(Vessel vessel, Actor actor, DateTimeOffset at)
    {
        if (Repair is null)
        {
            vessel.FailStep(StepSequence, actor, at);
        }
    }

    private Checks CheckRunning(Actor actor) =>
        new Checks()
            .That(
                State == WeldRunState.Running,
                "state",
                $"The run {Label} is already {StateWord(State)}."
            )
            .That(
                actor.PersonId == OperatorId,
                "operator",
                $"{OperatorName} started this run and must end it."
            );

    private void Finish(
        WeldRunState state,
        string? note,
        Length travelled,
        ChargeBasis basis,
        Tool tool,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentOutOfRangeException.ThrowIfNotEqual(tool.Id, ToolId);
        (State, EndNote, EndedAt, Travelled) = (state, note, at, travelled);
        tool.Charge(new ToolUse(Id, VesselSerial, travelled, basis, at, JointCode), actor);
    }
}
