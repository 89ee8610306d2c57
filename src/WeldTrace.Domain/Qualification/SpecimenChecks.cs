using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Qualification;

internal static class SpecimenChecks
{
    private const string Retest = "ISO 25239-4 5.3.4 (title seen, rule from memory)";

    /// <summary>Whether this person may enter a result of this planned test now.</summary>
    public static Checks Before(SpecimenFacts facts, Actor actor)
    {
        var kind = TestKinds.Of(facts.Planned.Kind);
        var state = QualificationStanding.StateOf(facts.Earlier);
        var checks = new Checks()
            .Role(actor, Role.Inspector)
            .That(
                facts.Qualification.State == QualificationState.Open,
                "state",
                $"{facts.Qualification.Number} is {QualificationRecord.StateWord(facts.Qualification.State)}; no result is entered any more."
            )
            .That(
                facts.Piece is not null,
                "piece",
                $"Piece {facts.Planned.PieceMark} isn't welded yet; results come after it."
            )
            .That(
                state != PlannedTestState.Passed,
                "passed",
                $"{facts.Planned.Id} has passed already."
            )
            .That(
                state != PlannedTestState.Failed,
                "failed",
                $"A replacement of {facts.Planned.Id} failed too; no further specimen is allowed. The qualification must be given up and welded anew.",
                null,
                Retest
            )
            .Add(CertificateRules.AgainstExamining(facts.Certificates, kind.Method, facts.Today));
        if (facts.Piece is { } piece)
        {
            checks.Add(SecondPerson.Check([piece.OperatorId], actor));
        }

        if (kind.Instrument is { } measures)
        {
            checks.Add(
                InstrumentRules.Check(
                    facts.Instrument,
                    facts.InstrumentMark,
                    measures,
                    null,
                    "",
                    facts.Today,
                    "Instrument"
                )
            );
        }

        return checks;
    }

    public static void Header(Checks checks, TestHeader header, DateOnly today)
    {
        Needed(header.Method, "Name the method standard", nameof(header.Method));
        Needed(
            header.MethodEdition,
            "Give the edition of the method standard",
            nameof(header.MethodEdition)
        );
        Needed(
            header.Acceptance,
            "Name the acceptance standard or specification; a method standard sets no limits",
            nameof(header.Acceptance)
        );
        Needed(
            header.AcceptanceEdition,
            "Give the edition and level of the acceptance standard",
            nameof(header.AcceptanceEdition)
        );
        checks
            .That(
                header.TestedOn <= today,
                "future",
                "The day of the test lies in the future; check it.",
                nameof(header.TestedOn)
            )
            .That(
                header.Remark.Length <= SpecimenTest.LongestText
                    && header.WrittenProcedure.Length <= SpecimenTest.LongestText,
                "remark",
                $"Keep remark and number of the procedure within {SpecimenTest.LongestText} characters each.",
                nameof(header.Remark)
            );

        void Needed(string text, string ask, string field) =>
            checks.Text(text, SpecimenTest.LongestText, ask, field);
    }
}
