using WeldTrace.Documents;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Welding;
using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Book;

/// <summary>Reviews of signals across runs, as parts of the book's list.</summary>
internal static class BookReviews
{
    public static IEnumerable<SheetPart> Of(IReadOnlyList<Record> records, Site site) =>
        records
            .OfType<SignalReview>()
            .OrderBy(r => r.At)
            .Select(r => new SheetPart(r.Label)
            {
                Values =
                [
                    new(
                        "Seen",
                        $"{SignalWords.Of(r.Seen.Signals)}: {SensibleDigits.Show((double)r.Seen.Mean, 4)} {r.Seen.Unit} among {r.Seen.Runs} runs of {r.Seen.SharedBy}"
                    ),
                    new("Came to", SignalWords.Of(r.Conclusion)),
                    new("What was looked at", r.Text),
                    .. r.FindingNumber is { } number
                        ? [new("Finding that came of it", Finding.LabelOf(number))]
                        : Array.Empty<LabelledValue>(),
                    new("By", $"{r.ReviewerName}, {site.Show(r.At)}"),
                ],
            });
}
