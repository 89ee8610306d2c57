using System.Text.Json.Nodes;
using WeldTrace.Documents.Exchange;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Testing;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.TestSupport.Records;
using Record = WeldTrace.Domain.Records.Record;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>What was taken back stays in the events and is declared wrong there (EPCIS 2.0: errorDeclaration; nothing is edited).</summary>
public sealed class CorrectedEventTests
{
    private static readonly PublishedSchema Epcis = new("epcis-2.0.schema.json");

    private readonly List<LedgerEntry> _entries = [];

    [Fact]
    public void Events_OfAWithdrawnTest_TellItAgainAsWrongAndNameTheRightOne()
    {
        var shop = new SampleShop().Reach(30);
        var wrong = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));
        Keep(wrong);
        Accept.All(wrong.Withdraw("Wrong gauge.", SamplePeople.Inspector, shop.Now));
        Keep(wrong);
        var right = Accept.Value(SampleTests.RecordLeak(shop, SampleTests.Tight));
        Keep(right);
        var source = Source(shop, wrong, right);

        var told = Told(source).Where(e => (string?)e["eventID"] == Name(wrong)).ToList();
        var declared = told[1]["errorDeclaration"]!;
        Assert.Equal(2, told.Count);
        Assert.Null(told[0]["errorDeclaration"]);
        Assert.Equal("-03:30", (string?)told[0]["eventTimeZoneOffset"]);
        Assert.Equal("incorrect_data", (string?)declared["reason"]);
        Assert.Equal(Name(right), (string?)declared["correctiveEventIDs"]![0]);
        Assert.Equal("Wrong gauge.", (string?)told[1]["weld:because"]);

        var lineage = JsonNode.Parse(ProvLineage.Write(source))!;
        Assert.Empty(new PublishedSchema("prov-json.schema.json").Errors(lineage));
        var gone = Assert.Single(lineage["wasInvalidatedBy"]!.AsObject()).Value!;
        Assert.Equal($"record:{wrong.Id:D}#v1", (string?)gone["prov:entity"]);
        Assert.Equal($"record:{wrong.Id:D}#act2", (string?)gone["prov:activity"]);
    }

    [Fact]
    public void Events_OfASectionMeasuredAgain_DeclareTheFirstResultWrong()
    {
        var shop = new SampleShop().Reach(50);
        var section = Accept.Value(SampleTests.RecordSection(shop, new(400)));
        Keep(section);
        Accept.All(
            section.Correct(
                1,
                null,
                SampleTests.Limits,
                "A shadow of the lamp.",
                SamplePeople.Inspector,
                shop.Now
            )
        );
        Keep(section);
        Accept.All(section.Conclude("Sound.", SamplePeople.Inspector, shop.Now));
        Keep(section);

        var told = Told(Source(shop, section));

        Assert.Equal([Name(section), Name(section), Name(section, 3)], Names(told));
        Assert.Equal(
            ["non_conformant", "non_conformant", "conformant"],
            told.Select(e => (string?)e["disposition"])
        );
        AssertDeclared(told[1], "incorrect_data", Name(section, 3), "A shadow of the lamp.");
    }

    [Fact]
    public void Events_OfASectionWithdrawn_AfterItsResultWasTakenBack_DeclareItWrongOnce()
    {
        var shop = new SampleShop().Reach(50);
        var section = Accept.Value(SampleTests.RecordSection(shop, new(100)));
        Keep(section);
        Accept.All(
            section.Correct(
                1,
                null,
                SampleTests.Limits,
                "A shadow of the lamp.",
                SamplePeople.Inspector,
                shop.Now
            )
        );
        Keep(section);
        Accept.All(section.Withdraw("Wrong vessel.", SamplePeople.QualityManager, shop.Now));
        Keep(section);

        var told = Told(Source(shop, section));

        Assert.Equal([Name(section), Name(section)], Names(told));
        AssertDeclared(told[1], "incorrect_data", null, "A shadow of the lamp.");
    }

    /// <summary>Both holds were seen as they were.</summary>
    [Fact]
    public void Events_OfAHoldRepeated_TellBothResults_AndDeclareNoneWrong()
    {
        var shop = new SampleShop().Reach(40);
        var test = Accept.Value(SampleTests.BeginPressure(shop));
        Keep(test);
        Hold(test, shop, "9.00");
        Accept.All(
            test.RepeatHold("A fitting leaked.", shop.Design, SamplePeople.Engineer, shop.Now)
        );
        Keep(test);
        Hold(test, shop, "8.00");

        var told = Told(Source(shop, test));

        Assert.Equal([Name(test, 2), Name(test, 4)], Names(told));
        Assert.All(told, e => Assert.Equal("non_conformant", (string?)e["disposition"]));
        Assert.All(told, e => Assert.Null(e["errorDeclaration"]));
    }

    private void Hold(PressureTest test, SampleShop shop, string end)
    {
        var reading = SampleTests.Hold("12.00", end);
        Accept.All(test.RecordStage(1, reading, shop.Design, SamplePeople.Inspector, shop.Now));
        Keep(test);
    }

    [Fact]
    public void Events_OfAFindingDecidedAgain_SayWhichDecisionReplacedTheFirst()
    {
        var shop = new SampleShop().Reach(30);
        var finding = shop.Report();
        Keep(finding);
        Accept.All(shop.Dispose(finding, DispositionKind.Repair));
        Keep(finding);
        Accept.All(shop.Dispose(finding, DispositionKind.UseAsIs));
        Keep(finding);

        var told = Told(Source(shop, finding));

        Assert.Equal(
            [Name(finding), Name(finding, 2), Name(finding, 3), Name(finding, 2)],
            Names(told)
        );
        Assert.Contains("use as is", (string?)told[2]["weld:words"], StringComparison.Ordinal);
        AssertDeclared(told[3], "weld:decidedAgain", Name(finding, 3), "Decided at the meeting.");
    }

    private static void AssertDeclared(
        JsonObject told,
        string reason,
        string? instead,
        string because
    )
    {
        var declared = told["errorDeclaration"]!;
        Assert.Equal(reason, (string?)declared["reason"]);
        Assert.Equal(
            instead is null ? [] : [instead],
            declared["correctiveEventIDs"]!.AsArray().Select(i => (string?)i)
        );
        Assert.Equal(because, (string?)told["weld:because"]);
    }

    private static IEnumerable<string?> Names(IEnumerable<JsonObject> told) =>
        told.Select(e => (string?)e["eventID"]);

    /// <summary>The events, which keep to the schema of the standard.</summary>
    private static List<JsonObject> Told(ExchangeSource source)
    {
        var document = JsonNode.Parse(EpcisHistory.Write(source))!;
        Assert.Empty(Epcis.Errors(document));
        return [.. document["epcisBody"]!["eventList"]!.AsArray().Select(e => e!.AsObject())];
    }

    private ExchangeSource Source(SampleShop shop, params IReadOnlyList<Record> records) =>
        new(
            shop.Vessel.Id,
            records,
            _entries,
            new HashSet<string>(),
            TimeZoneInfo.FindSystemTimeZoneById("America/St_Johns"),
            shop.Now
        );

    private static string Name(Record record, int version = 1) => RecordUri.Act(record.Id, version);

    private void Keep(Record record)
    {
        var act = record.PendingActs[^1];
        record.CountVersion();
        record.ForgetPendingActs();
        _entries.Add(
            new LedgerEntry
            {
                Number = _entries.Count,
                At = act.At,
                ActorId = act.ActorId,
                ActorName = act.ActorName,
                Act = act.Act,
                Reason = act.Reason,
                RecordKind = record.Kind,
                RecordId = record.Id,
                RecordVersion = record.Version,
                Vessels = record.ConcernedVessels,
                Content = RecordSnapshot.Of(record),
            }
        );
    }
}
