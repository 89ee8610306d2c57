using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Domain.Qualification;

/// <summary>Everything that a result is entered and judged with.</summary>
/// <param name="Qualification">Qualification.</param>
/// <param name="Planned">Planned test.</param>
/// <param name="Piece">Piece that stands for the planned one; null when none does.</param>
/// <param name="Earlier">Earlier results of the same planned test on that piece.</param>
/// <param name="Content">Procedure of the piece.</param>
/// <param name="Imperfections">Edition of the imperfection limits that the plan names.</param>
/// <param name="Certificates">Certificates of the tester.</param>
/// <param name="Instrument">Instrument that was typed; null when none of that mark exists.</param>
/// <param name="InstrumentMark">What was typed.</param>
/// <param name="Today">Day at the site.</param>
public sealed record SpecimenFacts(
    QualificationRecord Qualification,
    PlannedTest Planned,
    TestPiece? Piece,
    IReadOnlyList<SpecimenTest> Earlier,
    ProcedureContent Content,
    LimitTable Imperfections,
    IReadOnlyList<Certificate> Certificates,
    Instrument? Instrument,
    string InstrumentMark,
    DateOnly Today
);

/// <summary>The result of one specimen or examination, signed when it is entered and never changed.</summary>
public sealed class SpecimenTest : Record
{
    /// <summary>Longest standard, finding or remark.</summary>
    public const int LongestText = 400;

    /// <summary>What the tester's signature means.</summary>
    public const string TestedMeaning = "I made this test, and the readings are as recorded.";

    private SpecimenTest(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "qualification-test";

    /// <inheritdoc/>
    public override string Label =>
        Attempt == 0
            ? $"{QualificationNumber} {PlannedId}"
            : FormattableString.Invariant(
                $"{QualificationNumber} {PlannedId} replacement {Attempt}"
            );

    /// <inheritdoc/>
    public override bool IsSealed => Version > 0;

    /// <summary>Qualification.</summary>
    public Guid QualificationId { get; private set; }

    /// <summary>Number of the qualification.</summary>
    public string QualificationNumber { get; private set; } = "";

    /// <summary>Test piece.</summary>
    public Guid PieceId { get; private set; }

    /// <summary>Mark of the planned test.</summary>
    public string PlannedId { get; private set; } = "";

    /// <summary>0 for the first specimen, 1 and 2 for its replacements.</summary>
    public int Attempt { get; private set; }

    /// <summary>Test.</summary>
    public TestKind Test { get; private set; }

    /// <summary>Place on the weld in words.</summary>
    public string Place { get; private set; } = "";

    /// <summary>How it was made.</summary>
    public TestHeader Header { get; private set; } = null!;

    /// <summary>What was measured.</summary>
    public SpecimenEntry Entry { get; private set; } = null!;

    /// <summary>Instrument; null when the test needs none.</summary>
    public NamedRecord? Instrument { get; private set; }

    /// <summary>Photograph or report; null when none was handed in.</summary>
    public string? FileSha256 { get; private set; }

    /// <summary>Verdict computed from the entry.</summary>
    public Verdict Verdict { get; private set; }

    /// <summary>The verdict in words, with measured value and limit.</summary>
    public string VerdictSentence { get; private set; } = "";

    /// <summary>Who tested.</summary>
    public Guid TesterId { get; private set; }

    /// <summary>Printed name of whoever tested.</summary>
    public string TesterName { get; private set; } = "";

    /// <summary>UTC instant at which it was entered and signed.</summary>
    public DateTimeOffset SignedAt { get; private set; }

    /// <summary>Enters a result; the verdict follows from the entry and the plan's limits.</summary>
    /// <param name="id">Identity made when the form was shown, so that sending it twice enters one result.</param>
    /// <param name="facts">What it is judged with.</param>
    /// <param name="header">How it was made.</param>
    /// <param name="entry">What was measured.</param>
    /// <param name="fileSha256">Photograph or report, if one was handed in.</param>
    /// <param name="actor">Tester.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<SpecimenTest> Enter(
        Guid id,
        SpecimenFacts facts,
        TestHeader header,
        SpecimenEntry entry,
        string? fileSha256,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(header);
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = SpecimenChecks.Before(facts, actor);
        SpecimenChecks.Header(checks, header, facts.Today);
        var judged = SpecimenJudgement.Of(checks, facts, entry);
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var planned = facts.Planned;
        var test = new SpecimenTest(id)
        {
            QualificationId = facts.Qualification.Id,
            QualificationNumber = facts.Qualification.Number,
            PieceId = facts.Piece!.Id,
            PlannedId = planned.Id,
            Attempt = facts.Earlier.Count,
            Test = planned.Kind,
            Place = facts.Earlier.Count == 0 ? planned.Place : $"beside {planned.Place}",
            Header = header,
            Entry = entry,
            Instrument = facts.Instrument is { } i ? new NamedRecord(i.Id, i.Mark) : null,
            FileSha256 = fileSha256,
            Verdict = judged!.Verdict,
            VerdictSentence = judged.Sentence,
            TesterId = actor.PersonId,
            TesterName = actor.PrintedName,
            SignedAt = at,
        };
        test.Note(actor, at, "qualification test entered");
        return test;
    }
}
