using System.Globalization;
using System.Text;
using UglyToad.PdfPig;
using WeldTrace.Documents.Book;
using WeldTrace.Documents.RecordSheets;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Book;

/// <summary>The book is opened again and read: what the contents say is compared with the pages themselves.</summary>
public sealed class HistoryBookExporterTests
{
    private static readonly byte[] Written = Write(Model());
    private static readonly string[] Pages = WrittenPdf.Pages(Written);

    [Fact]
    public void Cover_NamesTheVesselItsStateAndTheLedger()
    {
        SampleFolder.Keep("history-book.pdf", Written);

        Assert.Contains("History of vessel NR-0714", Pages[0], StringComparison.Ordinal);
        Assert.Contains("accepted", Pages[0], StringComparison.Ordinal);
        Assert.Contains("struck through", Pages[0], StringComparison.Ordinal);
        Assert.Contains($"page 1 of {Pages.Length}", Pages[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Contents_GiveThePageOnWhichEachChapterBegins()
    {
        var chapters = Model().Chapters.Select(c => c.Title).ToList();
        var lines = ContentsLines();

        Assert.All(
            chapters,
            title =>
            {
                var line = Assert.Single(lines, l => l.Title == Plain(title));
                Assert.Contains(
                    Plain(title),
                    Plain(Pages[line.Page - 1]),
                    StringComparison.Ordinal
                );
            }
        );
    }

    [Fact]
    public void Contents_OfManyPages_StillGiveTheRightPages()
    {
        var many = Enumerable
            .Range(1, 150)
            .Select(i =>
                Sheet(string.Create(CultureInfo.InvariantCulture, $"Chapter number {i:000}"))
            )
            .ToList();
        var pages = WrittenPdf.Pages(Write(Model() with { Chapters = many }));
        var first = Array.FindIndex(
            pages,
            p => Plain(p).StartsWith("Chapternumber001", StringComparison.Ordinal)
        );

        // The cover, several pages of contents, then one page for each chapter.
        Assert.True(first > 3);
        Assert.Equal(first + 150, pages.Length);
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"Chapternumber150{pages.Length}"),
            Plain(string.Concat(pages[..first])),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void EachChapter_BeginsAPageAndHasABookmarkToIt()
    {
        using var pdf = PdfDocument.Open(Written);
        Assert.True(pdf.TryGetBookmarks(out var bookmarks));

        var pages = bookmarks
            .Roots.OfType<UglyToad.PdfPig.Outline.DocumentBookmarkNode>()
            .ToDictionary(b => Plain(b.Title), b => b.PageNumber);

        Assert.Equal(2, pages["Contents"]);
        foreach (var line in ContentsLines().Where(l => pages.ContainsKey(l.Title)))
        {
            Assert.Equal((line.Title, line.Page), (line.Title, pages[line.Title]));
        }

        Assert.Superset(
            new HashSet<string> { Plain("Tool card T-27"), Plain("All signatures") },
            pages.Keys.ToHashSet()
        );
    }

    [Fact]
    public void ContentsLine_LeadsToItsPage()
    {
        using var pdf = PdfDocument.Open(Written);

        var links = pdf.GetPage(2)
            .GetAnnotations()
            .Where(a => a.Type == UglyToad.PdfPig.Annotations.AnnotationType.Link)
            .ToList();

        Assert.Equal(ContentsLines().Count, links.Count);
        Assert.All(
            links,
            l =>
                Assert.True(
                    l.AnnotationDictionary.ContainsKey(UglyToad.PdfPig.Tokens.NameToken.Dest)
                )
        );
    }

    [Fact]
    public void SupersededRecord_IsPrintedWithTheReason()
    {
        var text = string.Join('\n', Pages);
        var reason = SampleRuns.Superseded().Superseded!.Reason;

        Assert.Contains(Plain(reason), Plain(text), StringComparison.Ordinal);
    }

    /// <summary>ISO 19005-1: the file says which part and level it was written for, and carries its colour profile. No checker is at hand.</summary>
    [Fact]
    public void File_SaysThatItWasWrittenForKeeping()
    {
        var raw = Encoding.Latin1.GetString(Written);

        Assert.Contains("pdfaid:part", raw, StringComparison.Ordinal);
        Assert.Contains("/OutputIntents", raw, StringComparison.Ordinal);
        Assert.DoesNotContain("/Encrypt", raw, StringComparison.Ordinal);
    }

    [Fact]
    public void SameModel_GivesTheSameText() =>
        Assert.Equal(Pages, WrittenPdf.Pages(Write(Model())));

    internal static HistoryBookModel Model()
    {
        var traveler = SampleTraveler.Model();
        return new HistoryBookModel
        {
            Stamp = traveler.Stamp,
            Serial = "NR-0714",
            RecordAddress = traveler.RecordAddress,
            State = new StateMark("accepted", MarkShape.Disc),
            Particulars = [new("Design", "NR-10 rev A")],
            Chapters =
            [
                BookChapter.Of(traveler),
                BookChapter.Of(SampleProcedure.Model()),
                BookChapter.Of(SampleTool.Model() with { Serial = "T-27" }),
                Sheet("Material"),
                BookChapter.OfSignatures(
                    "All signatures",
                    SampleFindings.Signatures(),
                    traveler.Stamp
                ),
            ],
        };
    }

    private static BookChapter Sheet(string title) =>
        BookChapter.Of(
            title,
            [
                new SheetPart("Lots")
                {
                    Table = new SheetTable(
                        [("Lot", 40), ("Cast", 60)],
                        [new SheetRow(["L-1", "C-90405"])]
                    ),
                },
            ]
        );

    private static byte[] Write(HistoryBookModel model)
    {
        using var pdf = new MemoryStream();
        HistoryBookExporter.Write(model, pdf);
        return pdf.ToArray();
    }

    private static List<(string Title, int Page)> ContentsLines()
    {
        using var pdf = PdfDocument.Open(Written);
        return
        [
            .. pdf.GetPage(2)
                .GetWords()
                .GroupBy(w => Math.Round(w.BoundingBox.Bottom / 4))
                .OrderByDescending(g => g.Key)
                .Select(g => g.OrderBy(w => w.BoundingBox.Left).Select(w => w.Text).ToList())
                .Where(w => w.Count > 1 && w[^1].All(char.IsAsciiDigit) && !w.Contains("of"))
                .Select(w =>
                    (string.Concat(w.SkipLast(1)), int.Parse(w[^1], CultureInfo.InvariantCulture))
                ),
        ];
    }

    private static string Plain(string text) =>
        string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
