using System.IO.Compression;
using System.Text.Json.Nodes;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;
using WeldTrace.Verify;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>What a vessel that was welded by a concession, tested twice and repaired hands on: whole, verified offline, and told as it was.</summary>
public sealed class RepairedVesselBundleTests(RepairedVesselBundle bundle)
    : IClassFixture<RepairedVesselBundle>
{
    private RepairedVessel Made => bundle.Vessel;

    [Fact]
    public async Task Bundle_VerifiesOffline_AndTellsWhatHappened()
    {
        Assert.Empty(await Made.Routed.Site.LedgerProblemsAsync());
        var report = BundleVerifier.Verify(new MemoryStream(bundle.Bytes));
        Assert.True(report.IsVerified, string.Join('\n', report.Problems));

        var concession = Record("concession", Made.Concession);
        Assert.Equal("granted", (string?)concession["state"]);
        Assert.Equal(RepairedVessel.ConcessionReason, (string?)concession["reason"]);

        var withdrawn = Record("leak-test", Made.WithdrawnTest);
        Assert.Equal(RepairedVessel.WithdrawalReason, (string?)withdrawn["withdrawal"]!["reason"]);
        Assert.Null(withdrawn["signedAt"]);
        var repeated = Record("leak-test", Made.RepeatedTest);
        Assert.Null(repeated["withdrawal"]);
        Assert.NotNull(repeated["signedAt"]);

        var repair = Record("weld-run", Made.Repair);
        Assert.Equal($"{Made.Finding}", (string?)repair["repair"]!["finding"]!["id"]);
        var finding = Record("finding", Made.Finding);
        Assert.Equal("closed", (string?)finding["state"]);
        Assert.Equal($"{Made.Repair}", (string?)finding["repair"]!["run"]!["id"]);
    }

    /// <summary>The leak test was passed before the repair, and its record stands; the step is to be done again.</summary>
    [Fact]
    public void Repair_OpensTheTestAgain_InTheRecordsAndInTheLedger()
    {
        var vessel = Record("vessel", Made.Routed.Shop.Vessel.Id);
        var step = vessel["steps"]!.AsArray().Single(s => (int?)s!["sequence"] == 30)!;
        Assert.Equal("ready", (string?)step["state"]);
        Assert.Null(step["doneAt"]);
        Assert.True(
            string.CompareOrdinal(
                (string?)step["openedAgainAt"],
                (string?)Record("leak-test", Made.RepeatedTest)["signedAt"]
            ) > 0
        );

        Assert.Contains("tests after step 20 opened again", Book(), StringComparison.Ordinal);
    }

    [Fact]
    public void Book_StrikesTheWithdrawnTest_WithItsReason_AndTellsOfTheRest()
    {
        var text = Book();

        Assert.All(
            (string[])
                [
                    $"by Ines Falk: {RepairedVessel.WithdrawalReason}.",
                    RepairedVessel.ConcessionReason,
                    RepairedVessel.FindingText,
                    RepairedVessel.CauseText,
                    RepairedVessel.CloseNote,
                    "MRB-4",
                ],
            told => Assert.Contains(told, text, StringComparison.Ordinal)
        );
        using var book = PdfDocument.Open(Read("history.pdf"));
        var titles = book.GetPages()
            .SelectMany(p => TestTitles(p).Select(t => IsStruck(p, t)))
            .ToList();
        Assert.Equal([true, false], titles);
        var (page, title) = book.GetPages()
            .SelectMany(p => TestTitles(p).Select(t => (p, t)))
            .First();
        var line = page.GetWords()
            .Where(w => Math.Abs(w.BoundingBox.Bottom - title.BoundingBox.Bottom) < 4)
            .ToList();
        Assert.True(IsStruck(page, line.Single(w => w.Text == "pass")));
        Assert.False(IsStruck(page, line.Single(w => w.Text == "withdrawn")));
    }

    // The heads of the two tests in the traveler: "Leak test, step 30: immersion bubbles".
    private static IEnumerable<Word> TestTitles(Page page)
    {
        var words = page.GetWords().ToList();
        return words
            .Zip(words.Skip(1))
            .Where(w => w.First.Text == "Leak" && w.Second.Text == "test,")
            .Select(w => w.First);
    }

    // A line along the middle of the word, from its start.
    private static bool IsStruck(Page page, Word word)
    {
        var box = word.BoundingBox;
        return page.Paths.Any(p =>
            p.GetBoundingRectangle() is { } line
            && line.Height < 1
            && line.Left <= box.Left + 1
            && line.Right >= box.Right - 1
            && line.Bottom > box.Bottom
            && line.Top < box.Top
        );
    }

    private string Book()
    {
        using var book = PdfDocument.Open(Read("history.pdf"));
        var text = string.Join(
            ' ',
            book.GetPages().Select(p => ContentOrderTextExtractor.GetText(p))
        );
        return string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }

    private JsonNode Record(string kind, Guid id) =>
        JsonNode.Parse(Read($"records/{kind}/{id:D}.json"))!;

    private byte[] Read(string path)
    {
        using var zip = new ZipArchive(new MemoryStream(bundle.Bytes));
        var entry =
            zip.GetEntry(path)
            ?? throw new InvalidOperationException(
                $"No {path} among {string.Join(' ', zip.Entries.Select(e => e.FullName))}"
            );
        using var stream = entry.Open();
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
