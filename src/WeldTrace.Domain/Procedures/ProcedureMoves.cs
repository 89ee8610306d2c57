using WeldTrace.Domain.People;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Procedures;

// The ways of a revision from draft to the end of its use.
public sealed partial class ProcedureRevision
{
    private const string SecondPerson = "21 CFR 11.10(g) as a model; site rule F17";

    /// <summary>Draft to trial: the pWPS may be used on test pieces.</summary>
    public Outcome PutOnTrial(Actor actor, DateTimeOffset at) =>
        Move(
            ProcedureState.Draft,
            ProcedureState.Trial,
            [Role.Engineer],
            actor,
            at,
            "procedure put on trial"
        );

    /// <summary>Trial to qualified: a complete, signed qualification record covers what this revision lays down.</summary>
    /// <param name="record">Qualification of this revision, or of an earlier one whose range still covers it.</param>
    /// <param name="actor">Who accepts it.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Qualify(QualificationRecord? record, Actor actor, DateTimeOffset at)
    {
        var against = ProcedureSupport.Against(this, record);
        if (against.Count > 0)
        {
            return Outcome.From(against);
        }

        var outcome = Move(
            ProcedureState.Trial,
            ProcedureState.Qualified,
            [Role.Engineer, Role.QualityManager],
            actor,
            at,
            "procedure qualified"
        );
        if (outcome.IsAccepted)
        {
            Qualified = new QualifiedBy(
                record!.Id,
                record.Number,
                record.ClosedAt!.Value,
                record.Range!
            );
        }

        return outcome;
    }

    /// <summary>Qualified to released, by someone who is not the author.</summary>
    /// <param name="earlier">The revision of this number that is released now; superseded by this act. Null when there is none.</param>
    /// <param name="actor">Who releases.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Release(ProcedureRevision? earlier, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        if (
            earlier is not null
            && (earlier.Number != Number || earlier.State != ProcedureState.Released)
        )
        {
            throw new ArgumentException(
                "Only a released revision of the same number is superseded.",
                nameof(earlier)
            );
        }

        if (actor.PersonId == AuthorId)
        {
            return Outcome.Refused(
                "F17",
                $"You wrote {Label}; its release needs a second person. Ask another engineer or the quality manager.",
                null,
                SecondPerson
            );
        }

        if (earlier?.RevisionIndex > RevisionIndex)
        {
            return Outcome.Refused(
                "supersession",
                $"{earlier.Label} is released and later than {Label}; an earlier revision doesn't take the place of one that came after it. Make a new revision from {Label} and release that."
            );
        }

        var outcome = Move(
            ProcedureState.Qualified,
            ProcedureState.Released,
            [Role.Engineer, Role.QualityManager],
            actor,
            at,
            "procedure released"
        );
        if (outcome.IsAccepted)
        {
            earlier?.SupersedeBy(this, actor, at);
        }

        return outcome;
    }

    /// <summary>Takes a revision out of use for good.</summary>
    public Outcome Withdraw(string reason, Actor actor, DateTimeOffset at)
    {
        if (State is ProcedureState.Superseded or ProcedureState.Withdrawn)
        {
            return Outcome.Refused("state", $"{Label} is already {StateWord(State)}.");
        }

        var refusals = new List<Refusal>();
        RequireRole(actor, [Role.Engineer, Role.QualityManager], refusals);
        RequireText(reason, "Give the reason", "Reason", refusals);
        if (refusals.Count == 0)
        {
            State = ProcedureState.Withdrawn;
            Note(actor, at, "procedure withdrawn", reason.Trim());
        }

        return Outcome.From(refusals);
    }

    private void SupersedeBy(ProcedureRevision later, Actor actor, DateTimeOffset at)
    {
        State = ProcedureState.Superseded;
        SupersededById = later.Id;
        Note(actor, at, "procedure superseded", $"by revision {later.Revision}");
    }

    private Outcome Move(
        ProcedureState from,
        ProcedureState to,
        IReadOnlyList<Role> roles,
        Actor actor,
        DateTimeOffset at,
        string act
    )
    {
        List<Refusal> refusals = [];
        if (State != from)
        {
            refusals.Add(
                new(
                    "state",
                    $"{Label} is {StateWord(State)}; only a revision that is {StateWord(from)} becomes {StateWord(to)}."
                )
            );
        }

        RequireRole(actor, roles, refusals);
        refusals.AddRange(Content.Check());
        if (refusals.Count == 0)
        {
            State = to;
            Note(actor, at, act);
        }

        return Outcome.From(refusals);
    }
}
