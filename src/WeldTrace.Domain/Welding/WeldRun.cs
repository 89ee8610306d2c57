using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

/// <summary>State of a weld run.</summary>
public enum WeldRunState
{
    /// <summary>The machine is welding.</summary>
    Running,

    /// <summary>Ended as planned.</summary>
    Ended,

    /// <summary>Ended before the planned path was welded.</summary>
    Interrupted,
}

/// <summary>One pass, welded once: who, with what, by which procedure revision, and what the process log showed.</summary>
public sealed class WeldRun : Record
{
    /// <summary>Longest note.</summary>
    public const int LongestText = 1000;

    private WeldRun(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "weld-run";

    /// <inheritdoc/>
    public override string Label => $"{VesselSerial} {JointCode} pass {PassNumber}";

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => SignedAt is not null;

    /// <summary>Vessel.</summary>
    public Guid VesselId { get; private set; }

    /// <summary>Serial of the vessel.</summary>
    public string VesselSerial { get; private set; } = "";

    /// <summary>Step on the route.</summary>
    public int StepSequence { get; private set; }

    /// <summary>Joint.</summary>
    public string JointCode { get; private set; } = "";

    /// <summary>Pass of the joint.</summary>
    public int PassNumber { get; private set; }

    /// <summary>Travel sense as welded, confirmed by the operator.</summary>
    public RotationSense Travel { get; private set; }

    /// <summary>Planned path, overlap included.</summary>
    public Length PlannedPath { get; private set; }

    /// <summary>Radius of the tool centre's track.</summary>
    public Length TrackRadius { get; private set; }

    /// <summary>Procedure revision.</summary>
    public Guid ProcedureRevisionId { get; private set; }

    /// <summary>Number and revision of the procedure.</summary>
    public string ProcedureLabel { get; private set; } = "";

    /// <summary>Machine.</summary>
    public Guid MachineId { get; private set; }

    /// <summary>Name of the machine.</summary>
    public string MachineName { get; private set; } = "";

    /// <summary>Tool.</summary>
    public Guid ToolId { get; private set; }

    /// <summary>Mark of the tool.</summary>
    public string ToolMark { get; private set; } = "";

    /// <summary>Operator.</summary>
    public Guid OperatorId { get; private set; }

    /// <summary>Printed name of the operator.</summary>
    public string OperatorName { get; private set; } = "";

    /// <summary>Rules as they stood when the run was started.</summary>
    public IReadOnlyList<RuleVerdict> Gate { get; private set; } = [];

    /// <summary>State.</summary>
    public WeldRunState State { get; private set; }

    /// <summary>UTC instant of the start.</summary>
    public DateTimeOffset StartedAt { get; private set; }

    /// <summary>UTC instant of the end.</summary>
    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>Why it was interrupted, or a remark.</summary>
    public string? EndNote { get; private set; }

    /// <summary>Length travelled, as stated at the end or, better, as measured from the log.</summary>
    public Length? Travelled { get; private set; }

    /// <summary>What the process log showed; null until it is in.</summary>
    public LogSummary? Log { get; private set; }

    /// <summary>UTC instant at which the operator signed; the run is closed from then on.</summary>
    public DateTimeOffset? SignedAt { get; private set; }

    /// <summary>Starts a run when every rule holds.</summary>
    /// <param name="id">Identity made when the form was shown, so that sending it twice starts one run.</param>
    /// <param name="facts">What the rules look at.</param>
    /// <param name="machine">Machine.</param>
    /// <param name="confirmedTravel">Travel sense that the operator confirmed.</param>
    /// <param name="actor">Operator.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<WeldRun> Start(
        Guid id,
        WeldGateFacts facts,
        Machine machine,
        RotationSense confirmedTravel,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(machine);
        ArgumentNullException.ThrowIfNull(actor);
        var gate = WeldGate.Judge(facts);
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
            .Add(gate.Where(v => v.Standing == RuleStanding.Forbids).Select(v => v.ToRefusal()));
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var run = new WeldRun(id)
        {
            VesselId = facts.Vessel.Id,
            VesselSerial = facts.Vessel.Serial,
            StepSequence = facts.Step.Sequence,
            JointCode = facts.Joint.Code,
            PassNumber = facts.Pass.Number,
            Travel = confirmedTravel,
            PlannedPath = facts.PlannedPath,
            TrackRadius = facts.Pass.TrackRadius,
            ProcedureRevisionId = facts.Revision!.Id,
            ProcedureLabel = facts.Revision.Label,
            MachineId = machine.Id,
            MachineName = machine.Name,
            ToolId = facts.Tool!.Id,
            ToolMark = facts.Tool.Mark,
            OperatorId = actor.PersonId,
            OperatorName = actor.PrintedName,
            Gate = gate,
            StartedAt = at,
        };
        run.Note(actor, at, "weld run started");
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
        vessel.FailStep(StepSequence, actor, at);
        return OpenInterruption(vessel, actor, at);
    }

    /// <summary>Whether the run still awaits its process log, and the person may bring it.</summary>
    public Outcome AwaitsLog(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return CheckAwaitsLog(actor).ToOutcome();
    }

    /// <summary>Takes in the judged process log: corrects the charge and opens a finding for each excursion.</summary>
    /// <param name="log">What the log showed.</param>
    /// <param name="windows">Windows it was judged against.</param>
    /// <param name="vessel">Vessel.</param>
    /// <param name="tool">Tool.</param>
    /// <param name="actor">Who brought the log.</param>
    /// <param name="at">UTC instant.</param>
    /// <returns>The findings that follow; may be none.</returns>
    public Outcome<IReadOnlyList<Finding>> TakeLog(
        LogSummary log,
        IReadOnlyList<ParameterWindow> windows,
        Vessel vessel,
        Tool tool,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(tool);
        var checks = CheckAwaitsLog(actor)
            .That(
                log.Travelled > Length.Zero || Travelled is not { } stated || stated <= Length.Zero,
                "no-travel",
                FormattableString.Invariant(
                    $"The log shows no travel in the work, but the run is recorded with {Travelled?.Millimetres:0} mm; check that it is the log of this run and that its columns are mapped rightly."
                )
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        Log = log;
        Travelled = log.Travelled;
        tool.Charge(
            new ToolUse(Id, VesselSerial, log.Travelled, ChargeBasis.ProcessLog, at, JointCode),
            actor
        );
        Note(actor, at, "process log judged");
        List<Finding> findings = [];
        if (!log.ReachedEnd && State == WeldRunState.Ended)
        {
            State = WeldRunState.Interrupted;
            vessel.FailStep(StepSequence, actor, at);
            findings.Add(OpenInterruption(vessel, actor, at));
        }

        findings.AddRange(log.Excursions.Select(e => OpenExcursion(e, windows, vessel, actor, at)));
        return findings.AsReadOnly();
    }

    /// <summary>The operator certifies the run as recorded; it is closed from then on and its step is passed.</summary>
    public Outcome Sign(Vessel vessel, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .That(
                actor.PersonId == OperatorId,
                "operator",
                $"{OperatorName} welded this run and must sign it."
            )
            .That(State != WeldRunState.Running, "state", "End the run first.")
            .That(
                Log is not null,
                "log",
                "Bring the machine's process log first; the run is judged from it."
            )
            .That(!IsSealed, "state", "The run is signed already.");
        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        Note(actor, at, "weld run signed");
        SignedAt = at;
        // A step that was opened again meanwhile is passed by the run that does it again.
        return
            State == WeldRunState.Ended
            && vessel.Step(StepSequence) is { State: StepState.InProgress }
            ? vessel.PassStep(StepSequence, actor, at)
            : Outcome.Accepted;
    }

    /// <summary>The words for a sense, as shown.</summary>
    public static string SenseWord(RotationSense sense) =>
        sense == RotationSense.Clockwise ? "clockwise" : "counter-clockwise";

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(WeldRunState state) =>
        state switch
        {
            WeldRunState.Running => "running",
            WeldRunState.Ended => "ended",
            WeldRunState.Interrupted => "interrupted",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

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

    private Checks CheckAwaitsLog(Actor actor) =>
        new Checks()
            .Role(actor, Role.Operator, Role.Engineer)
            .That(
                State != WeldRunState.Running,
                "state",
                "End the run first, then bring its process log."
            )
            .That(!IsSealed, "state", $"The run {Label} is signed; its log can't change.")
            .That(
                Log is null,
                "log",
                $"The run {Label} has its process log already ({Log?.FileName})."
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

    private Finding OpenInterruption(Vessel vessel, Actor actor, DateTimeOffset at)
    {
        var reached = Angle.FromRadians(Travelled!.Value.Metres / TrackRadius.Metres);
        var description = FormattableString.Invariant(
            $"Run of {JointCode} pass {PassNumber} stopped after {Travelled.Value.Millimetres:0} mm of {PlannedPath.Millimetres:0} mm. {EndNote}"
        );
        return Finding.Open(
            vessel,
            StepSequence,
            FindingOrigin.InterruptedRun,
            description.Trim(),
            this,
            new SeamPlace(JointCode, PassNumber, reached, null),
            actor,
            at
        );
    }

    private Finding OpenExcursion(
        LoggedExcursion excursion,
        IReadOnlyList<ParameterWindow> windows,
        Vessel vessel,
        Actor actor,
        DateTimeOffset at
    )
    {
        var window = windows.First(w => w.Parameter == excursion.Parameter);
        var extreme = ParameterUnits.FromSi(excursion.Parameter, excursion.ExtremeSi, window.Unit);
        var limit = excursion.IsAbove ? window.Upper : window.Lower;
        var description = FormattableString.Invariant(
            $"{ParameterNames.Of(excursion.Parameter)} {(excursion.IsAbove ? "above" : "below")} its window on {JointCode} pass {PassNumber}: {extreme:0.###} {window.Unit} against {limit} {window.Unit}, {excursion.StartAngle.Degrees:0.0}° to {excursion.EndAngle.Degrees:0.0}° from the start, {excursion.Length.Millimetres:0.0} mm of seam."
        );
        return Finding.Open(
            vessel,
            StepSequence,
            FindingOrigin.Excursion,
            description,
            this,
            new SeamPlace(JointCode, PassNumber, excursion.StartAngle, excursion.EndAngle),
            actor,
            at
        );
    }
}
