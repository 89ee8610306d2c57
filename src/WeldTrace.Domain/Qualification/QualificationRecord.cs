using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Qualification;

/// <summary>State of a qualification record.</summary>
public enum QualificationState
{
    /// <summary>Planned; pieces are welded and tested.</summary>
    Open,

    /// <summary>Complete and signed.</summary>
    Signed,

    /// <summary>Given up; its results stay readable.</summary>
    Abandoned,
}

/// <summary>
/// A procedure qualification record (WPQR): the plan, and once every planned result is in and passed, the range that it covers. Test
/// pieces and results are records of their own.
/// </summary>
public sealed class QualificationRecord : Record
{
    /// <summary>Longest number.</summary>
    public const int LongestNumber = 30;

    /// <summary>Longest reason.</summary>
    public const int LongestReason = 400;

    /// <summary>What the signature under a complete qualification means.</summary>
    public const string SignMeaning =
        "I have seen every result of this qualification; it is complete, and it covers the range stated.";

    /// <summary>What the signature under a qualification given up means.</summary>
    public const string AbandonMeaning = "I give up this qualification for the reason given.";

    private const string Source =
        "Ship-classification rules, July 2022, Ch. 12 6.3.2-6.3.6; NASA-STD-5006A w/Change 2 GWR 51, 55, 56";

    private QualificationRecord(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "qualification";

    /// <inheritdoc/>
    public override string Label => Number;

    /// <inheritdoc/>
    public override bool IsSealed => State != QualificationState.Open;

    /// <summary>Number; unique.</summary>
    public string Number { get; private set; } = "";

    /// <summary>Procedure revision that is qualified.</summary>
    public Guid ProcedureRevisionId { get; private set; }

    /// <summary>Number of that procedure.</summary>
    public string ProcedureNumber { get; private set; } = "";

    /// <summary>Number and revision of that procedure.</summary>
    public string ProcedureLabel { get; private set; } = "";

    /// <summary>State.</summary>
    public QualificationState State { get; private set; }

    /// <summary>Whether the joint is welded in several passes.</summary>
    public bool SeveralPasses { get; private set; }

    /// <summary>What must be welded and tested.</summary>
    public QualificationPlan Plan { get; private set; } = null!;

    /// <summary>Who planned it.</summary>
    public string PlannedByName { get; private set; } = "";

    /// <summary>What it covers; null until it is signed.</summary>
    public QualificationRange? Range { get; private set; }

    /// <summary>UTC instant at which it was signed or given up.</summary>
    public DateTimeOffset? ClosedAt { get; private set; }

    /// <summary>Why it was given up; null otherwise.</summary>
    public string? AbandonedBecause { get; private set; }

    /// <summary>Plans the qualification of a procedure that is on trial.</summary>
    public static Outcome<QualificationRecord> Open(
        string number,
        ProcedureRevision revision,
        PlanRequest request,
        PlanTables tables,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(revision);
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(actor);
        var plan = PlanComputation.Compute(revision.Content, request, tables);
        var checks = new Checks()
            .Role(actor, Role.Engineer)
            .Text(number, LongestNumber, "Give the qualification record a number", nameof(Number))
            .That(
                revision.State == ProcedureState.Trial,
                "state",
                $"{revision.Label} is {ProcedureRevision.StateWord(revision.State)}; only a procedure on trial is qualified."
            )
            .Add(plan.Refusals);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var record = new QualificationRecord(Guid.CreateVersion7(at))
        {
            Number = number.Trim(),
            ProcedureRevisionId = revision.Id,
            ProcedureNumber = revision.Number,
            ProcedureLabel = revision.Label,
            SeveralPasses = request.SeveralPasses,
            Plan = plan.Value!,
            PlannedByName = actor.PrintedName,
        };
        record.Note(actor, at, "qualification planned");
        return record;
    }

    /// <summary>Signs it when every planned result is in and passed, and says what it covers.</summary>
    /// <param name="revision">Procedure revision that is qualified.</param>
    /// <param name="pieces">All its test pieces.</param>
    /// <param name="tests">All its results.</param>
    /// <param name="ruleSet">Edition of the rule set that the plan names.</param>
    /// <param name="groups">Edition of the material groups that the plan names.</param>
    /// <param name="fabricator">Name of the workshop.</param>
    /// <param name="actor">Who signs.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Sign(
        ProcedureRevision revision,
        IReadOnlyList<TestPiece> pieces,
        IReadOnlyList<SpecimenTest> tests,
        LimitTable ruleSet,
        LimitTable groups,
        string fabricator,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(revision);
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentOutOfRangeException.ThrowIfNotEqual(revision.Id, ProcedureRevisionId);
        var checks = CheckOpen(actor)
            .That(
                revision.State == ProcedureState.Trial,
                "state",
                $"{revision.Label} is {ProcedureRevision.StateWord(revision.State)}; only a procedure on trial is qualified."
            );
        foreach (var missing in QualificationStanding.Of(this, pieces, tests).Missing)
        {
            checks.That(false, "incomplete", missing, null, Source);
        }

        if (checks.AllHold)
        {
            Note(actor, at, "qualification signed");
            Range = RangeComputation.Compute(
                revision.Content,
                SeveralPasses,
                fabricator,
                ruleSet,
                groups
            );
            Close(QualificationState.Signed, at);
        }

        return checks.ToOutcome();
    }

    /// <summary>Gives it up; what was welded and tested stays readable.</summary>
    public Outcome Abandon(string reason, Actor actor, DateTimeOffset at)
    {
        var checks = CheckOpen(actor)
            .Text(reason, LongestReason, "Give the reason", nameof(AbandonedBecause));
        if (checks.AllHold)
        {
            Note(actor, at, "qualification given up", reason.Trim());
            AbandonedBecause = reason.Trim();
            Close(QualificationState.Abandoned, at);
        }

        return checks.ToOutcome();
    }

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(QualificationState state) =>
        state switch
        {
            QualificationState.Open => "open",
            QualificationState.Signed => "signed",
            QualificationState.Abandoned => "given up",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    private Checks CheckOpen(Actor actor) =>
        new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .That(
                State == QualificationState.Open,
                "state",
                $"{Number} is {StateWord(State)} and can't change."
            );

    private void Close(QualificationState state, DateTimeOffset at) =>
        (State, ClosedAt) = (state, at);
}
