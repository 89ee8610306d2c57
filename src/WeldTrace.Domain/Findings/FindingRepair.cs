using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Findings;

/// <summary>What a repair is decided on.</summary>
/// <param name="Procedure">Procedure that is to be repaired by; null when none was chosen.</param>
/// <param name="Others">The other findings of the vessel.</param>
public sealed record RepairFacts(ProcedureRevision? Procedure, IReadOnlyCollection<Finding> Others);

/// <summary>A repair as it was decided.</summary>
/// <param name="Procedure">Procedure revision to repair by.</param>
/// <param name="Attempt">Which attempt at this place; 1 or more.</param>
/// <param name="WeldStep">Last weld step of the joint; tests and examinations after it are done anew.</param>
public sealed record RepairPlan(RecordName Procedure, int Attempt, int WeldStep);

/// <summary>A repair as it was carried out.</summary>
/// <param name="Length">Length of seam that was repaired.</param>
/// <param name="Note">What was done.</param>
/// <param name="PersonId">Who repaired.</param>
/// <param name="PrintedName">Printed name.</param>
/// <param name="At">UTC instant.</param>
public sealed record RepairWork(
    Length Length,
    string Note,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At
);

/// <summary>A decision of the material review board.</summary>
/// <param name="Reference">Number of the minutes.</param>
/// <param name="Members">Who sat on it.</param>
/// <param name="Text">What was decided.</param>
/// <param name="PersonId">Who recorded it.</param>
/// <param name="PrintedName">Printed name.</param>
/// <param name="At">UTC instant.</param>
public sealed record BoardDecision(
    string Reference,
    string Members,
    string Text,
    Guid PersonId,
    string PrintedName,
    DateTimeOffset At
);

// Repair: by a qualified procedure, at most twice at a place, and not after the proof or leak test, unless the board has decided.
public sealed partial class Finding
{
    /// <summary>Attempts at a place that need no board (NASA-STD-5006A 4.11).</summary>
    public const int AttemptsWithoutBoard = 2;

    /// <summary>What the signature under a board decision means.</summary>
    public const string BoardMeaning =
        "I record the decision of the material review board as it stands in its minutes.";

    /// <summary>What the signature under a repair means.</summary>
    public const string RepairMeaning =
        "I repaired this place by the procedure named, and stated the length that I repaired.";

    private const string RepairSource = "NASA-STD-5006A 4.11, GWR 116-119; NASA-STD-6016C MPR 134";

    private static Length LongestRepair => Length.FromMetres(100);

    /// <summary>Records what the material review board decided.</summary>
    /// <param name="reference">Number of the minutes; 1 to 80 characters.</param>
    /// <param name="members">Who sat on it; 1 to 400 characters.</param>
    /// <param name="text">What was decided; 1 to 1000 characters.</param>
    /// <param name="actor">Quality manager.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome RecordBoard(
        string reference,
        string members,
        string text,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.QualityManager)
            .Text(reference, 80, "Give the number of the minutes", nameof(BoardDecision.Reference))
            .Text(members, 400, "Name who sat on the board", nameof(BoardDecision.Members))
            .Text(text, LongestText, "Say what was decided", nameof(BoardDecision.Text))
            .That(
                State == FindingState.Open,
                "state",
                $"{Label} is {StateWord(State)}; the board decides before the disposition."
            );
        if (checks.AllHold)
        {
            Board = new(
                reference.Trim(),
                members.Trim(),
                text.Trim(),
                actor.PersonId,
                actor.PrintedName,
                at
            );
            Note(actor, at, "board decision recorded", Board.Text);
        }

        return checks.ToOutcome();
    }

    /// <summary>Records that the repair was carried out; the tests and examinations after the weld are done anew.</summary>
    /// <param name="length">Length of seam repaired; above zero.</param>
    /// <param name="note">What was done; 1 to 1000 characters.</param>
    /// <param name="vessel">The vessel.</param>
    /// <param name="actor">Operator or engineer who repaired.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome RecordRepair(
        Length length,
        string note,
        Vessel vessel,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentOutOfRangeException.ThrowIfNotEqual(vessel.Id, VesselId);
        var checks = new Checks()
            .Role(actor, Role.Operator, Role.Engineer)
            .Text(note, LongestText, "Say what was done", nameof(RepairWork.Note))
            .That(
                length > Length.Zero && length <= LongestRepair,
                "length",
                "Give the length of seam that was repaired, above zero.",
                nameof(RepairWork.Length)
            )
            .That(
                AwaitsRepair,
                "state",
                $"{Label} asks for no repair now; it is {StateWord(State)}{(Repair is null ? "" : ", and the repair is recorded")}."
            )
            .That(
                !vessel.IsFinal,
                "vessel",
                $"{VesselSerial} is {Vessel.StateWord(vessel.State)}; nothing is repaired on it."
            );
        if (checks.AllHold)
        {
            Repair = new(length, note.Trim(), actor.PersonId, actor.PrintedName, at);
            Note(actor, at, "repair carried out", Repair.Note);
            if (vessel.Step(StepSequence) is { IsJudgement: false })
            {
                vessel.WaiveStep(StepSequence, actor, at, $"{Label}: repaired");
            }
        }

        return checks.ToOutcome();
    }

    /// <summary>Whether a repair was decided and not yet carried out.</summary>
    public bool AwaitsRepair =>
        State == FindingState.Disposed
        && Disposition?.Kind == DispositionKind.Repair
        && Repair is null;

    /// <summary>Why the board must decide before a repair here; null when it needn't.</summary>
    /// <param name="vessel">The vessel.</param>
    /// <param name="others">The other findings of the vessel.</param>
    public string? NeedsBoard(Vessel vessel, IReadOnlyCollection<Finding> others)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(others);
        var attempts = AttemptsBefore(others);
        var tested = vessel
            .Steps.Where(s => s.Kind is StepKind.LeakTest or StepKind.PressureTest)
            .FirstOrDefault(s => s.IsDone || s.State == StepState.Failed);
        return attempts >= AttemptsWithoutBoard
                ? $"This place was repaired {attempts} times already."
            : tested is not null
                ? $"Step {tested.Sequence} ({tested.Title}) has tested the vessel already; a repair after a leak or proof test resets those tests."
            : null;
    }

    private int AttemptsBefore(IReadOnlyCollection<Finding> others) =>
        others.Count(f => f.Id != Id && f.Repair is not null && IsSamePlace(f));

    // A place without angles is the whole joint; one without a joint is the step at which it was seen.
    private bool IsSamePlace(Finding other)
    {
        if (Place is not { } here || other.Place is not { } there)
        {
            return Place is null && other.Place is null && other.StepSequence == StepSequence;
        }

        return here.JointCode == there.JointCode && Overlap(here, there);
    }

    private static bool Overlap(SeamPlace here, SeamPlace there)
    {
        const double Near = 5;
        if (here.Start is not { } from || there.Start is not { } otherFrom)
        {
            return true;
        }

        var (to, otherTo) = (here.End ?? from, there.End ?? otherFrom);
        return from.Degrees - Near <= otherTo.Degrees && otherFrom.Degrees - Near <= to.Degrees;
    }

    private void CheckRepair(Checks checks, RepairFacts? repair, Vessel vessel)
    {
        var board = NeedsBoard(vessel, repair?.Others ?? []);
        checks
            .That(
                repair?.Procedure is { State: ProcedureState.Released },
                "procedure",
                repair?.Procedure is { } other
                    ? $"{other.Label} is {ProcedureRevision.StateWord(other.State)}; a repair needs a procedure that is qualified and released."
                    : "Choose the qualified and released procedure to repair by.",
                nameof(RepairPlan.Procedure),
                RepairSource
            )
            .That(
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
        var welded = vessel
            .Steps.Where(s => s.Kind == StepKind.Weld)
            .Where(s => Place is null || s.JointCode == Place.JointCode)
            .Where(s => s.IsDone || s.State == StepState.Failed)
            .Select(s => s.Sequence)
            .DefaultIfEmpty(StepSequence)
            .Max();
        PlannedRepair = new(
            RecordName.Of(repair.Procedure!),
            AttemptsBefore(repair.Others) + 1,
            welded
        );
        vessel.OpenTestsAgain(welded, StepSequence, actor, at, $"{Label}: {Disposition!.Reason}");
    }
}
