using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Findings;

// Repair: a weld run of its own, by a qualified procedure, at most twice at a place, and not after the proof or leak test, unless the board has decided.
public sealed partial class Finding
{
    /// <summary>Attempts at a place that need no board (NASA-STD-5006A 4.11).</summary>
    public const int AttemptsWithoutBoard = 2;

    private const string RepairSource = "NASA-STD-5006A 4.11, GWR 116-119; NASA-STD-6016C MPR 134";

    /// <summary>Whether a repair was decided and its weld is not signed yet.</summary>
    public bool AwaitsRepair =>
        State == FindingState.Disposed
        && Disposition?.Kind == DispositionKind.Repair
        && Repair is null;

    /// <summary>Whether a decision may be taken: on an open finding, and anew on a repair whose weld is not begun.</summary>
    public bool AwaitsDecision =>
        State == FindingState.Open || (AwaitsRepair && PlannedRepair?.Run is null);

    /// <summary>Why the board must decide before a repair here; null when it needn't.</summary>
    /// <param name="place">Where it would be welded.</param>
    /// <param name="vessel">The vessel.</param>
    /// <param name="others">The other findings of the vessel.</param>
    public string? NeedsBoard(RepairPlace place, Vessel vessel, IReadOnlyCollection<Finding> others)
    {
        ArgumentNullException.ThrowIfNull(place);
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(others);
        var attempts = AttemptsBefore(place, others);
        var tested = vessel
            .Steps.Where(s => s.Kind is StepKind.LeakTest or StepKind.PressureTest)
            .FirstOrDefault(s => s.IsDone || s.State == StepState.Failed);
        return attempts >= AttemptsWithoutBoard
                ? $"This place was repaired {attempts} times already."
            : tested is not null
                ? $"Step {tested.Sequence} ({tested.Title}) has tested the vessel already; a repair after a leak or proof test resets those tests."
            : null;
    }

    /// <summary>The weld of the repair begins; it counts as an attempt from now on, and the decision stands.</summary>
    internal void BeginRepair(RecordName run, Actor actor, DateTimeOffset at)
    {
        PlannedRepair = PlannedRepair! with { Run = run };
        Note(actor, at, "repair weld begun", run.Label);
    }

    /// <summary>The weld of the repair is signed. What was failed for want of it is waived; a weld that broke off has opened a finding of its own.</summary>
    internal void TakeRepair(
        RepairWork work,
        bool isWhole,
        Vessel vessel,
        Actor actor,
        DateTimeOffset at
    )
    {
        Repair = work;
        Note(actor, at, isWhole ? "repair carried out" : "repair broken off", work.Note);
        if (isWhole && vessel.Step(StepSequence) is { IsJudgement: false })
        {
            vessel.WaiveStep(StepSequence, actor, at, $"{Label}: repaired");
        }
    }

    // A decided repair counts whether or not it is welded yet.
    private int AttemptsBefore(RepairPlace place, IReadOnlyCollection<Finding> others) =>
        others.Count(f => f.Id != Id && f.PlannedRepair?.Place?.Overlaps(place) == true);

    private void CheckRepair(Checks checks, RepairFacts? repair, Vessel vessel)
    {
        checks.That(
            repair?.Procedure is { State: ProcedureState.Released },
            "procedure",
            repair?.Procedure is { } other
                ? $"{other.Label} is {ProcedureRevision.StateWord(other.State)}; a repair needs a procedure that is qualified and released."
                : "Choose the qualified and released procedure to repair by.",
            nameof(RepairPlan.Procedure),
            RepairSource
        );
        if (repair?.Place is not { } place)
        {
            checks.That(
                false,
                "place",
                "Choose the pass to weld along, and give the angles from which and to which.",
                nameof(RepairPlan.Place)
            );
            return;
        }

        place.Check(checks, repair.Design, vessel, Place);
        var board = NeedsBoard(place, vessel, repair.Others);
        checks.That(
            board is null || Board is not null,
            "board",
            $"{board} The material review board decides first; record its decision.",
            null,
            RepairSource
        );
    }

    // What was tested after the weld says nothing about the mended one.
    private void FollowRepair(RepairFacts repair, Vessel vessel, Actor actor, DateTimeOffset at)
    {
        var place = repair.Place!;
        var welded = vessel
            .Steps.Where(s => s.Kind == StepKind.Weld && s.JointCode == place.JointCode)
            .Where(s => s.IsDone || s.State == StepState.Failed)
            .Max(s => s.Sequence);
        PlannedRepair = new(
            RecordName.Of(repair.Procedure!),
            AttemptsBefore(place, repair.Others) + 1,
            welded,
            place
        );
        vessel.OpenTestsAgain(welded, StepSequence, actor, at, $"{Label}: {Disposition!.Reason}");
    }
}
