using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Findings;

// What is decided on a finding, and the verification that it was done.
public sealed partial class Finding
{
    /// <summary>Decides what happens to the vessel; a repair whose weld is not begun may be decided anew, and the earlier decision is kept.</summary>
    /// <param name="kind">Decision.</param>
    /// <param name="reason">Why; 1 to 1000 characters.</param>
    /// <param name="vessel">The vessel; its route follows the decision.</param>
    /// <param name="weldedBy">Everyone who welded on the vessel.</param>
    /// <param name="actor">Who decides.</param>
    /// <param name="at">UTC instant.</param>
    /// <param name="repair">What a repair is decided on; null for any other decision.</param>
    public Outcome Dispose(
        DispositionKind kind,
        string reason,
        Vessel vessel,
        IReadOnlyCollection<Guid> weldedBy,
        Actor actor,
        DateTimeOffset at,
        RepairFacts? repair = null
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentOutOfRangeException.ThrowIfNotEqual(vessel.Id, VesselId);
        var checks = new Checks()
            .Role(actor, RolesFor(kind))
            .Text(
                reason,
                LongestText,
                "Give the reason for the decision",
                nameof(Disposition.Reason)
            )
            .That(AwaitsDecision, "state", $"{Label} is already {StateWord(State)}.")
            .That(
                !vessel.IsFinal || kind == DispositionKind.Scrap,
                "vessel",
                $"{VesselSerial} is {Vessel.StateWord(vessel.State)}, so nothing more is done on it; decide {DispositionWord(DispositionKind.Scrap)}."
            )
            .Add(SecondPerson.Check(weldedBy, actor));
        if (kind == DispositionKind.Repair)
        {
            CheckRepair(checks, repair, vessel);
        }

        if (checks.AllHold)
        {
            if (Disposition is { } earlier)
            {
                (EarlierDecisions, PlannedRepair) = ([.. EarlierDecisions ?? [], earlier], null);
            }

            State = FindingState.Disposed;
            Disposition = new(kind, reason.Trim(), actor.PersonId, actor.PrintedName, at);
            Note(actor, at, $"finding disposed: {DispositionWord(kind)}", reason.Trim());
            Follow(vessel, repair, actor, at);
        }

        return checks.ToOutcome();
    }

    /// <summary>The roles that may take a decision: a repair is the quality manager's, with the board where the rule asks for it.</summary>
    /// <param name="kind">Decision.</param>
    public static IReadOnlyList<Role> RolesFor(DispositionKind kind) =>
        kind == DispositionKind.Repair
            ? [Role.QualityManager]
            : [Role.Inspector, Role.QualityManager];

    /// <summary>Verifies that the decision was carried out, and lifts the hold when no other finding keeps it.</summary>
    /// <param name="note">What was seen; 1 to 1000 characters.</param>
    /// <param name="vessel">The vessel.</param>
    /// <param name="others">Every other finding of the vessel.</param>
    /// <param name="weldedBy">Everyone who welded on the vessel.</param>
    /// <param name="actor">Who verified.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Close(
        string note,
        Vessel vessel,
        IReadOnlyCollection<Finding> others,
        IReadOnlyCollection<Guid> weldedBy,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(others);
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentOutOfRangeException.ThrowIfNotEqual(vessel.Id, VesselId);
        var checks = new Checks()
            .Role(actor, Role.Inspector, Role.QualityManager)
            .Text(note, LongestText, "Say what was verified", nameof(Verification.Note))
            .That(
                State == FindingState.Disposed,
                "state",
                $"{Label} is {StateWord(State)}; it is closed after its disposition."
            )
            .That(
                !IsDoneAgain || vessel.IsFinal || IsStepSettled(vessel),
                "rework",
                $"Step {StepSequence} of {VesselSerial} isn't done again yet; finish it first."
            )
            .That(
                !AwaitsRepair || vessel.IsFinal,
                "repair",
                $"The repair of {VesselSerial} is decided and its weld is not signed yet; the operator welds and signs it first."
            )
            .Add(
                SecondPerson.Check(
                    Repair is { } mended ? [.. weldedBy, mended.PersonId] : weldedBy,
                    actor
                )
            );
        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        Verification = new(note.Trim(), actor.PersonId, actor.PrintedName, at);
        Note(actor, at, "finding closed", note.Trim());
        State = FindingState.Closed;
        if (others.All(f => f.Id == Id || f.State == FindingState.Closed))
        {
            vessel.LiftHold(actor, at);
        }

        return Outcome.Accepted;
    }

    // A repair asks for the step itself to be done again only where it opened it.
    private bool IsStepSettled(Vessel vessel) =>
        vessel.Step(StepSequence) is { } step
        && (
            step.IsDone
            || (
                Disposition!.Kind == DispositionKind.Repair
                && step.State != StepState.Failed
                && step.OpenedAgainAt != Disposition.At
            )
        );

    private bool IsDoneAgain =>
        Disposition?.Kind is DispositionKind.Rework or DispositionKind.Repair;

    private void Follow(Vessel vessel, RepairFacts? repair, Actor actor, DateTimeOffset at)
    {
        var why = $"{Label}: {Disposition!.Reason}";
        switch (Disposition.Kind)
        {
            case DispositionKind.UseAsIs:
                vessel.WaiveStep(StepSequence, actor, at, why);
                break;
            case DispositionKind.Scrap:
                vessel.Scrap(actor, at, why);
                break;
            case DispositionKind.Repair:
                FollowRepair(repair!, vessel, actor, at);
                break;
            default:
                vessel.ReopenStep(StepSequence, actor, at, why);
                break;
        }
    }
}
