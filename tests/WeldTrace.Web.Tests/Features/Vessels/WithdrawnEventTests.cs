using System.Text.Json.Nodes;
using WeldTrace.Documents.Exchange;
using WeldTrace.Domain.Ledger;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.TestSupport.Records;
using Record = WeldTrace.Domain.Records.Record;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>A test that was taken back stays in the events and is declared wrong there (EPCIS 2.0: errorDeclaration; nothing is edited).</summary>
public sealed class WithdrawnEventTests
{
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
        var source = new ExchangeSource(
            shop.Vessel.Id,
            [wrong, right],
            _entries,
            new HashSet<string>(),
            TimeZoneInfo.FindSystemTimeZoneById("America/St_Johns"),
            shop.Now
        );

        var document = JsonNode.Parse(EpcisHistory.Write(source))!;

        Assert.Empty(new PublishedSchema("epcis-2.0.schema.json").Errors(document));
        var events = document["epcisBody"]!["eventList"]!.AsArray().Select(e => e!.AsObject());
        var told = events.Where(e => (string?)e["eventID"] == Name(wrong)).ToList();
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

    private static string Name(Record record) => RecordUri.Act(record.Id, 1);

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
