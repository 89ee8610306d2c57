using WeldTrace.Documents;
using WeldTrace.Documents.Qualifications;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Qualifications.Sheet;

/// <summary>Results as a qualification record prints them, a first failure included.</summary>
internal static class PrintedResults
{
    public static IEnumerable<ResultRow> Of(TestStanding standing)
    {
        var (planned, word) = (standing.Planned, TestKinds.Of(standing.Planned.Kind).Word);
        return standing.Results.Count == 0
            ?
            [
                new ResultRow(
                    planned.Id,
                    word,
                    planned.Place,
                    new StateMark("no result", MarkShape.Ring)
                ),
            ]
            : standing.Results.Select(r => Row(planned, word, r));
    }

    private static ResultRow Row(PlannedTest planned, string word, SpecimenTest result) =>
        new(
            result.Attempt == 0
                ? planned.Id
                : FormattableString.Invariant($"{planned.Id} replacement {result.Attempt}"),
            word,
            result.Place,
            PrintedMarks.Of(
                DomainMarks.Of((Verdict?)result.Verdict),
                TestRecord.VerdictWord(result.Verdict)
            )
        )
        {
            Sentence = result.VerdictSentence,
            Details = string.Join(
                "; ",
                SpecimenText.Of(result).Select(l => $"{l.Label}: {l.Value}")
            ),
        };
}
