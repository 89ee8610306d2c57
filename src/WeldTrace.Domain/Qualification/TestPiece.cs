using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Qualification;

/// <summary>State of a test piece.</summary>
public enum TestPieceState
{
    /// <summary>The machine is welding it.</summary>
    Welding,

    /// <summary>Welded, with its process log, and signed.</summary>
    Welded,

    /// <summary>Spoilt while welding; kept on record.</summary>
    Discarded,
}

/// <summary>A lot that one side of a test piece was cut from; known through every cut (GWR 49).</summary>
/// <param name="Id">Lot.</param>
/// <param name="Number">Lot number.</param>
/// <param name="CastNumber">Cast number.</param>
/// <param name="Material">Alloy and temper.</param>
public sealed record PieceLot(Guid Id, string Number, string CastNumber, string Material);

/// <summary>A test piece of a qualification: its material, how it was welded, and what the process log showed.</summary>
public sealed class TestPiece : Record
{
    /// <summary>Longest remark.</summary>
    public const int LongestText = 1000;

    /// <summary>What the operator's signature means.</summary>
    public const string WeldedMeaning = "I welded this test piece as recorded here.";

    /// <summary>What the signature under a spoilt piece means.</summary>
    public const string DiscardMeaning = "I discard this test piece for the reason given.";

    private TestPiece(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "test-piece";

    /// <inheritdoc/>
    public override string Label => $"{QualificationNumber} piece {Mark}";

    /// <inheritdoc/>
    public override bool IsSealed => SignedAt is not null;

    /// <summary>Qualification.</summary>
    public Guid QualificationId { get; private set; }

    /// <summary>Number of the qualification.</summary>
    public string QualificationNumber { get; private set; } = "";

    /// <summary>Mark of the planned piece.</summary>
    public string Mark { get; private set; } = "";

    /// <summary>Procedure revision, on trial when it was welded.</summary>
    public Guid ProcedureRevisionId { get; private set; }

    /// <summary>Lots of both sides.</summary>
    public IReadOnlyList<PieceLot> Lots { get; private set; } = [];

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

    /// <summary>Rules as they stood when welding began.</summary>
    public IReadOnlyList<RuleVerdict> Gate { get; private set; } = [];

    /// <summary>State.</summary>
    public TestPieceState State { get; private set; }

    /// <summary>UTC instant of the start.</summary>
    public DateTimeOffset StartedAt { get; private set; }

    /// <summary>Length travelled, charged to the tool.</summary>
    public Length? Travelled { get; private set; }

    /// <summary>What the process log showed.</summary>
    public LogSummary? Log { get; private set; }

    /// <summary>A remark, or why it was discarded.</summary>
    public string? Remark { get; private set; }

    /// <summary>UTC instant at which the operator signed; closed from then on.</summary>
    public DateTimeOffset? SignedAt { get; private set; }

    /// <summary>Begins a test piece when every rule holds.</summary>
    /// <param name="id">Identity made when the form was shown, so that sending it twice begins one piece.</param>
    /// <param name="facts">What the rules look at.</param>
    /// <param name="actor">Operator.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<TestPiece> Begin(
        Guid id,
        TestPieceFacts facts,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(actor);
        var gate = TestPieceRules.Judge(facts);
        var checks = new Checks()
            .Role(actor, Role.Operator, Role.Engineer)
            .Add(gate.Where(v => v.Standing == RuleStanding.Forbids).Select(v => v.ToRefusal()));
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var piece = new TestPiece(id)
        {
            QualificationId = facts.Qualification.Id,
            QualificationNumber = facts.Qualification.Number,
            Mark = facts.Planned.Mark,
            ProcedureRevisionId = facts.Revision.Id,
            Lots =
            [
                .. facts.Lots.Select(l => new PieceLot(
                    l.Id,
                    l.Number,
                    l.CastNumber,
                    $"{l.Alloy}-{l.Temper}"
                )),
            ],
            MachineId = facts.Machine!.Id,
            MachineName = facts.Machine.Name,
            ToolId = facts.Tool!.Id,
            ToolMark = facts.Tool.Mark,
            OperatorId = actor.PersonId,
            OperatorName = actor.PrintedName,
            Gate = gate,
            StartedAt = at,
        };
        piece.Note(actor, at, "test piece begun");
        return piece;
    }

    /// <summary>Takes in the judged process log and closes the piece; the length travelled is charged to the tool.</summary>
    public Outcome Finish(LogSummary log, string? remark, Tool tool, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(log);
        var checks = CheckWelding(tool, actor)
            .That(
                (remark?.Length ?? 0) <= LongestText,
                "remark",
                $"Keep the remark within {LongestText} characters.",
                nameof(Remark)
            )
            .That(
                log.Travelled > Length.Zero,
                "no-travel",
                "The log shows no travel in the work; check that it is the log of this piece and that its columns are mapped rightly."
            );
        if (checks.AllHold)
        {
            Note(actor, at, "test piece welded");
            Log = log;
            Close(TestPieceState.Welded, log.Travelled, remark, at);
            tool.Charge(Use(log.Travelled, ChargeBasis.ProcessLog, at), actor);
        }

        return checks.ToOutcome();
    }

    /// <summary>Closes a piece that was spoilt; what was travelled is charged to the tool.</summary>
    /// <param name="travelled">Length travelled as the operator states it; zero or more.</param>
    /// <param name="reason">What happened; 1 to 1000 characters.</param>
    /// <param name="tool">Tool.</param>
    /// <param name="actor">Operator.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Discard(
        Length travelled,
        string reason,
        Tool tool,
        Actor actor,
        DateTimeOffset at
    )
    {
        var checks = CheckWelding(tool, actor)
            .Text(reason, LongestText, "Say what happened", nameof(Remark))
            .That(
                travelled >= Length.Zero && travelled.Metres <= 100,
                "travelled",
                "Give the length travelled, zero or more.",
                nameof(Travelled)
            );
        if (checks.AllHold)
        {
            Note(actor, at, "test piece discarded", reason.Trim());
            Close(TestPieceState.Discarded, travelled, reason, at);
            tool.Charge(Use(travelled, ChargeBasis.Stated, at), actor);
        }

        return checks.ToOutcome();
    }

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(TestPieceState state) =>
        state switch
        {
            TestPieceState.Welding => "being welded",
            TestPieceState.Welded => "welded",
            TestPieceState.Discarded => "discarded",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };

    private ToolUse Use(Length length, ChargeBasis basis, DateTimeOffset at) =>
        new(Id, Label, length, basis, at) { JointCode = Mark };

    private Checks CheckWelding(Tool tool, Actor actor)
    {
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(actor);
        ArgumentOutOfRangeException.ThrowIfNotEqual(tool.Id, ToolId);
        return new Checks()
            .That(
                State == TestPieceState.Welding,
                "state",
                $"{Label} is {StateWord(State)} already."
            )
            .That(
                actor.PersonId == OperatorId,
                "operator",
                $"{OperatorName} began this piece and must close it."
            );
    }

    private void Close(TestPieceState state, Length travelled, string? remark, DateTimeOffset at) =>
        (State, Travelled, Remark, SignedAt) = (
            state,
            travelled,
            string.IsNullOrWhiteSpace(remark) ? null : remark.Trim(),
            at
        );
}
