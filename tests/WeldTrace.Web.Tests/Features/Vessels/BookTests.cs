using System.IO.Compression;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;
using WeldTrace.Domain.Findings;
using WeldTrace.Verify;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>The book of a vessel is opened again and read: whatever its bundle holds must be told of in it.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class BookTests(DemoSite site)
{
    [Theory]
    [InlineData("NR10-0001")]
    [InlineData("NR10-0009")]
    public async Task Book_InTheBundle_TellsOfEveryRecordSignatureAndFile(string serial)
    {
        var visit = await site.VisitAsync(DemoPeople.Auditor);
        var bundle = await BytesAsync(visit, Routes.Bundle(serial));
        Assert.Empty(BundleVerifier.Verify(new MemoryStream(bundle)).Problems);
        using var zip = new ZipArchive(new MemoryStream(bundle));
        var text = Text(Read(zip.GetEntry("history.pdf")!));

        var missing = zip
            .Entries.Where(e => e.FullName.StartsWith("records/", StringComparison.Ordinal))
            .SelectMany(e => Names(e.FullName.Split('/')[1], Read(e)))
            .Concat(
                zip.Entries.Where(e =>
                        e.FullName.StartsWith("attachments/", StringComparison.Ordinal)
                    )
                    .Select(e => Path.GetFileNameWithoutExtension(e.Name))
            )
            .Where(n => !text.Contains(Plain(n), StringComparison.Ordinal));
        Assert.Equal([serial], missing.Prepend(serial));
    }

    [Fact]
    public async Task Book_ByItself_SaysHowManyActsTheLedgerHas()
    {
        var visit = await site.VisitAsync(DemoPeople.Auditor);

        var text = Text(await BytesAsync(visit, Routes.Book("NR10-0001")));

        Assert.Contains(Plain("History of vessel NR10-0001"), text, StringComparison.Ordinal);
        Assert.Contains(Plain("Acts in the ledger"), text, StringComparison.Ordinal);
        Assert.Contains(Plain("Every act in the ledger"), text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Book_OfAVesselWithAReviewedSignal_NamesTheFindingThatCameOfIt()
    {
        var visit = await site.VisitAsync(DemoPeople.Auditor);
        var (serial, finding) = await site.ReadAsync(async db =>
        {
            var review = await db.SignalReviews.SingleAsync(r => r.FindingNumber != null);
            var vessel = await db.Vessels.SingleAsync(v => v.Id == review.VesselId);
            return (vessel.Serial, Finding.LabelOf(review.FindingNumber!.Value));
        });

        var text = Text(await BytesAsync(visit, Routes.Book(serial)));

        Assert.Contains(
            Plain($"Finding that came of it {finding}"),
            text,
            StringComparison.Ordinal
        );
    }

    /// <summary>What a person would look for in the book to find a record there.</summary>
    private static IEnumerable<string> Names(string kind, byte[] json)
    {
        using var record = JsonDocument.Parse(json);
        string[] fields = kind switch
        {
            "signature" => ["printedName", "meaning"],
            "tool" or "instrument" => ["mark"],
            "component" or "vessel" => ["serial"],
            "machine" => ["name"],
            "material-lot" or "heat-treatment" or "certificate" or "qualification" => ["number"],
            "production-lot" or "procedure-revision" or "tool-design" => ["number"],
            "weld-run" => ["operatorName", "toolMark", "procedureLabel"],
            "leak-test" or "pressure-test" or "section" => ["inspectorName", "verdictSentence"],
            "laboratory-test" => ["testerName", "verdictSentence"],
            "finding" => ["description"],
            "concession" => ["reason"],
            "joint-cleaning" => ["method"],
            "joint-fit-up" => ["instrumentMark"],
            _ => [],
        };
        return
        [
            .. fields
                .Select(f => record.RootElement.GetProperty(f))
                .Where(v => v.ValueKind == JsonValueKind.String)
                .Select(v => v.GetString()!),
        ];
    }

    private static string Text(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return Plain(
            string.Concat(document.GetPages().Select(p => ContentOrderTextExtractor.GetText(p)))
        );
    }

    private static string Plain(string text) =>
        string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    private static byte[] Read(ZipArchiveEntry entry)
    {
        using var stream = entry.Open();
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static async Task<byte[]> BytesAsync(SiteVisit visit, string path)
    {
        using var answer = await visit.GetAsync(path);
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadAsByteArrayAsync();
    }
}
