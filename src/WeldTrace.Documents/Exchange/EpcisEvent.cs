using System.Text.Json.Nodes;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Exchange;

/// <summary>One EPCIS event: what an act that is in the ledger did to things.</summary>
internal sealed record EpcisEvent(LedgerEntry Entry, string Type)
{
    /// <summary>When it happened; the act is recorded when the entry says.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>ADD, OBSERVE or DELETE; null for a transformation.</summary>
    public string? Action { get; init; }

    public required string BizStep { get; init; }

    public string? Disposition { get; init; }

    public required IReadOnlyList<Guid> Things { get; init; }

    /// <summary>What went into a transformation.</summary>
    public IReadOnlyList<Guid> Inputs { get; init; } = [];

    /// <summary>Name that several events of one transformation share.</summary>
    public string? Transformation { get; init; }

    /// <summary>Types and records of the papers behind it.</summary>
    public IReadOnlyList<(string Type, Guid Id)> Papers { get; init; } = [];

    /// <summary>What is known of a thing that enters.</summary>
    public JsonObject? Master { get; init; }

    public JsonArray? Sensors { get; init; }

    /// <summary>A few words in our own vocabulary.</summary>
    public required string Words { get; init; }

    public string Id => RecordUri.Act(Entry.RecordId, Entry.RecordVersion);

    public JsonObject ToJson(TimeZoneInfo zone)
    {
        var json = new JsonObject
        {
            ["type"] = Type,
            ["eventID"] = Id,
            ["eventTime"] = LedgerTime.Print(At),
            ["eventTimeZoneOffset"] = Offset(zone.GetUtcOffset(At)),
            ["recordTime"] = LedgerTime.Print(Entry.At),
            ["bizStep"] = BizStep,
            [EpcisHistory.Own("act")] = Entry.Act,
            [EpcisHistory.Own("by")] = Entry.ActorName,
            [EpcisHistory.Own("words")] = Words,
        };
        Set(json, "action", Action);
        Set(json, "disposition", Disposition);
        Set(json, "transformationID", Transformation);
        Set(json, "sensorElementList", Sensors?.DeepClone());
        Set(json, "ilmd", Master?.DeepClone());
        if (Papers.Count > 0)
        {
            json["bizTransactionList"] = new JsonArray([
                .. Papers.Select(p => new JsonObject
                {
                    ["type"] = p.Type,
                    ["bizTransaction"] = RecordUri.Of(p.Id),
                }),
            ]);
        }

        if (Inputs.Count > 0)
        {
            json["inputEPCList"] = Names(Inputs);
        }

        json[Action is null ? "outputEPCList" : "epcList"] = Names(Things);
        return json;
    }

    /// <summary>The same event, declared wrong.</summary>
    /// <param name="zone">Time zone of the site.</param>
    /// <param name="by">The act that says so.</param>
    /// <param name="reason">A word of the standard.</param>
    /// <param name="instead">What is right; none when nothing takes its place.</param>
    public JsonObject ToDeclaration(
        TimeZoneInfo zone,
        LedgerEntry by,
        string reason,
        IReadOnlyList<EpcisEvent> instead
    )
    {
        var json = ToJson(zone);
        json["recordTime"] = LedgerTime.Print(by.At);
        json["errorDeclaration"] = new JsonObject
        {
            ["declarationTime"] = LedgerTime.Print(by.At),
            ["reason"] = reason,
            ["correctiveEventIDs"] = new JsonArray([.. instead.Select(e => (JsonNode)e.Id)]),
        };
        Set(json, EpcisHistory.Own("because"), by.Reason);
        return json;
    }

    private static void Set(JsonObject json, string name, JsonNode? value)
    {
        if (value is not null)
        {
            json[name] = value;
        }
    }

    private static JsonArray Names(IReadOnlyList<Guid> things) =>
        new([.. things.Select(t => (JsonNode)RecordUri.Of(t))]);

    private static string Offset(TimeSpan offset) =>
        (offset < TimeSpan.Zero ? '-' : '+')
        + offset.ToString(@"hh\:mm", System.Globalization.CultureInfo.InvariantCulture);
}
