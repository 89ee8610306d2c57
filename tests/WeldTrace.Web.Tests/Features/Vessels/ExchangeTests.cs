using System.IO.Compression;
using System.Text.Json.Nodes;
using WeldTrace.Domain.Ledger;
using WeldTrace.Verify;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>What a bundle holds for other systems, judged by the schemas of the standards.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class ExchangeTests(DemoSite site)
{
    private static readonly PublishedSchema Epcis = new("epcis-2.0.schema.json");
    private static readonly PublishedSchema Prov = new("prov-json.schema.json");

    [Theory]
    [InlineData("NR10-0001")]
    [InlineData("NR10-0009")]
    public async Task Bundle_OfTheWorkshop_HoldsValidEventsAndLineage(string serial)
    {
        var bundle = await BundleAsync(serial);

        Assert.Empty(Epcis.Errors(Read(bundle, BundlePaths.Events)));
        Assert.Empty(Prov.Errors(Read(bundle, BundlePaths.Lineage)));
        var report = BundleVerifier.Verify(new MemoryStream(bundle));
        Assert.Equal(3, report.Manifest!.Version);
        Assert.Empty(report.Problems);
    }

    [Fact]
    public async Task Events_OfAShippedVessel_TellOfMaterialWeldingAndTests()
    {
        var events = Events(await BundleAsync("NR10-0001")).ToList();

        Assert.Equal(events.Count, events.DistinctBy(e => Text(e, "eventID")).Count());
        Assert.Contains(events, e => Text(e, "bizStep") == "receiving" && e["ilmd"] is not null);
        Assert.Contains(events, e => Text(e, "type") == "TransformationEvent");
        Assert.Contains(events, e => Text(e, "bizStep") == "sensor_reporting");
        Assert.Contains(
            events,
            e => Text(e, "bizStep") == "inspecting" && Text(e, "disposition") == "conformant"
        );
    }

    [Fact]
    public async Task Lineage_LeadsFromTheWpsToItsQualificationAndThePwps()
    {
        var bundle = await BundleAsync("NR10-0001");
        var lineage = Read(bundle, BundlePaths.Lineage);
        var from = lineage["wasDerivedFrom"]!
            .AsObject()
            .Select(r => r.Value!)
            .ToLookup(r => Text(r, "prov:generatedEntity"), r => Text(r, "prov:usedEntity"));
        var kinds = lineage["entity"]!
            .AsObject()
            .Where(e => e.Value!["prov:type"] is not null)
            .ToDictionary(e => e.Key, e => (string)e.Value!["prov:type"]!["$"]!);

        var record = from.SelectMany(g => g.Select(used => (Made: g.Key, Used: used)))
            .First(d =>
                kinds[d.Made] == "weld:procedure-revision" && kinds[d.Used] == "weld:qualification"
            );
        Assert.Contains(from[record.Used], used => kinds[used] == "weld:qualification-test");
        var records = Walk(from, record.Used);
        Assert.Contains(records, name => kinds[name] == "weld:procedure-revision");
        Assert.Contains(
            lineage["wasAssociatedWith"]!.AsObject(),
            a => a.Value!["prov:plan"] is not null
        );
        Assert.Contains(kinds.Values, kind => kind == "weld:process-log");
    }

    // What the schema must refuse, so that a valid document means something (checked against the standard's own rules).
    [Theory]
    [InlineData("eventTimeZoneOffset", null)]
    [InlineData("bizStep", "welding")]
    [InlineData("colour", "green")]
    [InlineData("disposition", "shiny")]
    [InlineData("eventID", "not a uri")]
    public async Task Schema_OfEvents_RefusesWhatTheStandardRefuses(string member, string? value)
    {
        var document = Read(await BundleAsync("NR10-0001"), BundlePaths.Events);
        var one = document["epcisBody"]!["eventList"]![0]!.AsObject();
        one.Remove(member);
        if (value is not null)
        {
            one[member] = value;
        }

        Assert.NotEmpty(Epcis.Errors(document));
    }

    [Fact]
    public async Task Schema_OfLineage_RefusesARelationWithOneEnd()
    {
        var document = Read(await BundleAsync("NR10-0001"), BundlePaths.Lineage);
        document["wasDerivedFrom"]!.AsObject().First().Value!.AsObject().Remove("prov:usedEntity");

        Assert.NotEmpty(Prov.Errors(document));
    }

    private static HashSet<string> Walk(ILookup<string, string> from, string start)
    {
        HashSet<string> seen = [];
        Queue<string> next = new([start]);
        while (next.TryDequeue(out var here))
        {
            foreach (var used in from[here].Where(seen.Add))
            {
                next.Enqueue(used);
            }
        }

        return seen;
    }

    private static IEnumerable<JsonNode> Events(byte[] bundle) =>
        Read(bundle, BundlePaths.Events)["epcisBody"]!["eventList"]!.AsArray().Select(e => e!);

    private static string Text(JsonNode json, string member) => (string?)json[member] ?? "";

    private static JsonNode Read(byte[] bundle, string path)
    {
        using var zip = new ZipArchive(new MemoryStream(bundle));
        using var stream = zip.GetEntry(path)!.Open();
        return JsonNode.Parse(stream)!;
    }

    private async Task<byte[]> BundleAsync(string serial)
    {
        var visit = await site.VisitAsync(DemoPeople.Auditor);
        using var answer = await visit.GetAsync(Routes.Bundle(serial));
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadAsByteArrayAsync();
    }
}
