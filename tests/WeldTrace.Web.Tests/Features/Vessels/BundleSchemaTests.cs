using System.IO.Compression;
using System.Text.Json.Nodes;
using WeldTrace.Documents.Bundle;
using WeldTrace.Domain.Compliance;
using WeldTrace.Domain.Ledger;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Features.LedgerView.Checkpoints;
using WeldTrace.Web.Tests.Access;
using WeldTrace.Web.Tests.Features.Trace.Histories;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>Whatever is written beside the records keeps to its published schema, in which every member is required and none is left open.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class BundleSchemaTests(DemoSite site)
{
    private static readonly JsonNode Schema = JsonNode.Parse(BundleSchema.Published())!;

    [Theory]
    [InlineData("NR10-0001")]
    [InlineData("NR10-0010")]
    [InlineData("NR10-0020")]
    public async Task EveryFileOfABundle_KeepsToIt(string serial)
    {
        using var bundle = await ZipAsync(Routes.Bundle(serial));
        var entries = bundle
            .Entries.Where(e => IsIn(e, "ledger/") && IsJson(e))
            .ExceptBy([BundlePaths.Checkpoint, BundlePaths.Proofs], e => e.FullName)
            .ToList();

        await AssertKeepsAsync(bundle.GetEntry(BundlePaths.Manifest)!, "manifest");
        await AssertKeepsAsync(bundle.GetEntry(BundlePaths.Compliance)!, "compliance");
        await AssertKeepsAsync(bundle.GetEntry(BundlePaths.Checkpoint)!, "checkpoint");
        await AssertKeepsAsync(bundle.GetEntry(BundlePaths.Proofs)!, "proofs");
        Assert.True(entries.Count > 20, $"Only {entries.Count} entries were looked at.");
        foreach (var entry in entries)
        {
            await AssertKeepsAsync(entry, "entry");
        }

        Assert.Equal(
            BundleSchema.Published(),
            await BytesAsync(bundle.GetEntry(BundlePaths.BundleSchema)!)
        );
    }

    /// <summary>Program and person read the same matrix, and of every line that something shows the record lies in the bundle.</summary>
    [Fact]
    public async Task ComplianceMatrix_OfABundle_IsTheOneOfThePage()
    {
        const string Serial = "NR10-0001";
        using var bundle = await ZipAsync(Routes.Bundle(Serial));
        var auditor = await site.VisitAsync(DemoPeople.Auditor);
        var matrix = JsonNode.Parse(await BytesAsync(bundle.GetEntry(BundlePaths.Compliance)!))!;
        var lines = matrix["lines"]!.AsArray();

        var ofPage = await auditor.GetAsync(Routes.ComplianceCsv(Serial));

        Assert.Equal(
            await ofPage.Content.ReadAsByteArrayAsync(Cancellation),
            await BytesAsync(bundle.GetEntry(BundlePaths.ComplianceTable)!)
        );
        Assert.Equal(
            ComplianceMatrix.Requirements.Select(r => r.Text),
            lines.Select(l => l!["requirement"]!.GetValue<string>())
        );
        Assert.All(
            lines.SelectMany(l => l!["evidence"]!.AsArray()),
            e => Assert.NotNull(bundle.GetEntry(PathOf(e!)))
        );
        Assert.Contains(lines, l => l!["state"]!.GetValue<string>() == "shown");
    }

    private static string PathOf(JsonNode evidence) =>
        BundlePaths.Record(
            evidence["kind"]!.GetValue<string>(),
            RecordUri.Read(evidence["record"]!.GetValue<string>())!.Record!.Value
        );

    [Fact]
    public async Task ListOfACollection_KeepsToIt()
    {
        var order = await DemoOrders.ReadyAsync(site, "auditor", DemoOrders.Small);
        using var collection = await ZipAsync(Routes.HistoryFile(order.Id));

        await AssertKeepsAsync(collection.GetEntry(CollectionPaths.Contents)!, "contents");
        Assert.NotNull(collection.GetEntry(CollectionPaths.Schema));
    }

    [Fact]
    public async Task CheckpointOfThePage_KeepsToIt()
    {
        var size = await site.ReadAsync(db => Task.FromResult(db.Checkpoints.Min(c => c.TreeSize)));
        var visit = await site.VisitAsync(DemoPeople.Auditor);

        var answer = await visit.GetAsync(Routes.CheckpointFile(size, CheckpointFiles.Statement));

        AssertKeeps(
            JsonNode.Parse(await answer.Content.ReadAsStringAsync(Cancellation))!,
            "checkpoint",
            CheckpointFiles.Statement
        );
    }

    /// <summary>The document keeps to its definition, and no longer does when a member is added or taken away.</summary>
    internal static void AssertKeeps(JsonNode document, string definition, string name)
    {
        var schema = PublishedSchema.Of(Schema, definition);
        var errors = schema.Errors(document);
        Assert.True(errors.Count == 0, $"{name}: {string.Join(", ", errors.Take(10))}");
        var members = document.AsObject();
        members["unheardOf"] = 1;
        Assert.NotEmpty(schema.Errors(document));
        members.Remove("unheardOf");
        foreach (var member in members.Select(m => m.Key).ToList())
        {
            var kept = members[member];
            members.Remove(member);
            Assert.NotEmpty(schema.Errors(document));
            members[member] = kept;
        }
    }

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    private static async Task AssertKeepsAsync(ZipArchiveEntry entry, string definition) =>
        AssertKeeps(JsonNode.Parse(await BytesAsync(entry))!, definition, entry.FullName);

    private async Task<ZipArchive> ZipAsync(string address)
    {
        var auditor = await site.VisitAsync(DemoPeople.Auditor);
        var answer = await auditor.GetAsync(address);
        return new ZipArchive(await answer.Content.ReadAsStreamAsync(Cancellation));
    }

    private static async Task<byte[]> BytesAsync(ZipArchiveEntry entry)
    {
        await using var stream = await entry.OpenAsync(Cancellation);
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes, Cancellation);
        return bytes.ToArray();
    }

    private static bool IsIn(ZipArchiveEntry entry, string folder) =>
        entry.FullName.StartsWith(folder, StringComparison.Ordinal);

    private static bool IsJson(ZipArchiveEntry entry) =>
        entry.FullName.EndsWith(".json", StringComparison.Ordinal);
}
