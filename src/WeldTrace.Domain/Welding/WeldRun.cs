using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

/// <summary>What a run repairs.</summary>
/// <param name="Finding">The finding whose decision asked for it.</param>
/// <param name="Attempt">Which attempt at the place; 1 or more.</param>
/// <param name="Start">Angle along the travel from the start of the pass at which it begins.</param>
public sealed record RunRepair(RecordName Finding, int Attempt, Angle Start);

/// <summary>One pass, welded once: who, with what, by which procedure revision, and what the process log showed.</summary>
public sealed partial class WeldRun : Record
{
    /// <summary>Longest note.</summary>
    public const int LongestText = 1000;

    private WeldRun(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "weld-run";

    /// <inheritdoc/>
    public override string Label => $"{VesselSerial} {PassLabel}";

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

    /// <summary>The pass that it welds, or along which it repairs, in words.</summary>
    public string PassLabel =>
        $"{JointCode} pass {PassNumber}"
        + (Repair is { } repair ? $", repair of {repair.Finding.Label}" : "");

    /// <summary>What it repairs; null for the pass itself.</summary>
    public RunRepair? Repair { get; private set; }

    /// <summary>Angle along the travel from the start of the pass at which the run begins; zero for the pass itself.</summary>
    public Angle From => Repair?.Start ?? Angle.Zero;

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

    /// <summary>The checks before welding as they were answered; null in runs started before they were kept.</summary>
    public IReadOnlyList<PreWeldCheck>? Checks { get; private set; }

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

    /// <summary>The operator certifies the run as recorded; it is closed from then on, and its step is passed, or its repair carried out.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="actor">Operator.</param>
    /// <param name="at">UTC instant.</param>
    /// <param name="repaired">The finding that the run repairs; null for the pass itself.</param>
    public Outcome Sign(Vessel vessel, Actor actor, DateTimeOffset at, Finding? repaired = null)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(actor);
        if (repaired?.Id != Repair?.Finding.Id)
        {
            throw new ArgumentException("Not the finding that the run repairs.", nameof(repaired));
        }

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
        if (repaired is not null)
        {
            repaired.TakeRepair(Work(at), State == WeldRunState.Ended, vessel, actor, at);
            return Outcome.Accepted;
        }

        // A step that was opened again meanwhile is passed by the run that does it again.
        return
            State == WeldRunState.Ended
            && vessel.Step(StepSequence) is { State: StepState.InProgress }
            ? vessel.PassStep(StepSequence, actor, at)
            : Outcome.Accepted;
    }

    private RepairWork Work(DateTimeOffset at) =>
        new(
            Travelled ?? Length.Zero,
            EndNote ?? $"Welded by {ProcedureLabel} with {ToolMark} on {MachineName}.",
            OperatorId,
            OperatorName,
            at,
            RecordName.Of(this)
        );

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
}
