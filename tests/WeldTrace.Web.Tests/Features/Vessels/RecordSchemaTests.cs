using System.IO.Compression;
using System.Text;
using System.Text.Json.Nodes;
using WeldTrace.Documents.Bundle;
using WeldTrace.Domain.Ledger;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>The published schema is what the types give, and the records of bundles keep to it (JSON Schema, draft 2020-12, judged by JsonSchema.Net).</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class RecordSchemaTests(DemoSite site)
{
    [Fact]
    public async Task PublishedFile_IsWhatTheTypesGive()
    {
        var given = RecordSchema.FromTypes();
        var published = Encoding.UTF8.GetString(RecordSchema.Published());
        if (given != published)
        {
            var file = Path.Combine(Path.GetTempPath(), "records.schema.json");
            await File.WriteAllTextAsync(file, given, TestContext.Current.CancellationToken);
            Assert.Fail(
                $"The form of a record has changed. If it was meant to, put {file} in the place of src/WeldTrace.Documents/Bundle/records.schema.json, and tell what changed."
            );
        }
    }

    [Theory]
    [InlineData("NR10-0001")]
    [InlineData("NR10-0010")]
    [InlineData("NR10-0020")]
    public async Task EveryRecordOfABundle_KeepsToIt(string serial)
    {
        var auditor = await site.VisitAsync(DemoPeople.Auditor);
        using var answer = await auditor.GetAsync(Routes.Bundle(serial));
        using var bundle = new ZipArchive(
            await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken)
        );
        var schema = await ReadAsync(bundle.GetEntry(BundlePaths.RecordSchema)!);
        var records = bundle.Entries.Where(e =>
            e.FullName.StartsWith("records/", StringComparison.Ordinal)
        );

        List<string> errors = [];
        var kinds = 0;
        foreach (var kind in records.GroupBy(e => e.FullName.Split('/')[1]))
        {
            kinds++;
            var of = PublishedSchema.Of(schema, kind.Key);
            foreach (var record in kind)
            {
                var document = await ReadAsync(record);
                errors.AddRange(of.Errors(document).Select(e => $"{record.FullName}: {e}"));
            }

            AssertChangedBreaks(of, await ReadAsync(kind.First()));
        }

        Assert.True(errors.Count == 0, string.Join('\n', errors.Take(20)));
        Assert.True(kinds > 8, $"Only {kinds} kinds of records were looked at.");
    }

    private static void AssertChangedBreaks(PublishedSchema schema, JsonNode document)
    {
        document["unheardOf"] = 1;
        Assert.NotEmpty(schema.Errors(document));
        document.AsObject().Remove("unheardOf");
        document.AsObject().Remove("version");
        Assert.NotEmpty(schema.Errors(document));
    }

    /// <summary>A property with a default came later than its record: written where it was never given, it would part old records from their ledger entries.</summary>
    [Fact]
    public void PropertyWithADefault_IsNeverWrittenIntoARecordThatHasNone()
    {
        var wrong = Objects(JsonNode.Parse(RecordSchema.Published())!)
            .Where(o => o["properties"] is JsonObject)
            .SelectMany(o =>
                o["properties"]!
                    .AsObject()
                    .Where(p => p.Value is JsonObject kept && kept.ContainsKey("default"))
                    .Select(p => p.Key)
                    .Intersect((o["required"]?.AsArray() ?? []).Select(r => r!.GetValue<string>()))
            )
            .Distinct();

        Assert.Equal([], wrong);
    }

    [Fact]
    public void Quantity_InAnotherUnit_BreaksIt()
    {
        var length = PublishedSchema.Of(JsonNode.Parse(RecordSchema.Published())!, "weld-run");

        Assert.Contains(
            length.Errors(JsonNode.Parse("""{ "trackRadius": { "value": 62, "unit": "mm" } }""")!),
            e => e.StartsWith("/trackRadius/unit", StringComparison.Ordinal)
        );
    }

    private static IEnumerable<JsonObject> Objects(JsonNode node) =>
        node switch
        {
            JsonObject o => o.Where(p => p.Value is not null)
                .SelectMany(p => Objects(p.Value!))
                .Prepend(o),
            JsonArray a => a.Where(i => i is not null).SelectMany(i => Objects(i!)),
            _ => [],
        };

    private static async Task<JsonNode> ReadAsync(ZipArchiveEntry entry)
    {
        await using var stream = await entry.OpenAsync(TestContext.Current.CancellationToken);
        return (
            await JsonNode.ParseAsync(
                stream,
                cancellationToken: TestContext.Current.CancellationToken
            )
        )!;
    }
}
