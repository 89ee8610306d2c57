using System.Text.Json.Nodes;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;

namespace WeldTrace.Documents.Exchange;

/// <summary>What the files for other systems are made of: records as they are now, and every ledger entry of them.</summary>
public sealed class ExchangeSource
{
    private readonly Dictionary<Guid, Record> _records;
    private readonly ILookup<Guid, LedgerEntry> _entries;

    /// <param name="vesselId">The vessel.</param>
    /// <param name="records">The vessel's records and what they rest on.</param>
    /// <param name="entries">Every ledger entry of those records.</param>
    /// <param name="files">SHA-256 of the logs and attachments that are at hand.</param>
    /// <param name="zone">Time zone of the site.</param>
    /// <param name="madeAt">UTC instant at which the files are made.</param>
    public ExchangeSource(
        Guid vesselId,
        IReadOnlyList<Record> records,
        IReadOnlyList<LedgerEntry> entries,
        IReadOnlySet<string> files,
        TimeZoneInfo zone,
        DateTimeOffset madeAt
    )
    {
        ArgumentNullException.ThrowIfNull(records);
        (VesselId, Records, Files) = (vesselId, records, files);
        (Zone, MadeAt) = (zone, madeAt);
        Entries = [.. entries.OrderBy(e => e.Number)];
        _records = records.DistinctBy(r => r.Id).ToDictionary(r => r.Id);
        _entries = Entries.ToLookup(e => e.RecordId);
    }

    public Guid VesselId { get; }

    public IReadOnlyList<Record> Records { get; }

    /// <summary>In the order of the ledger.</summary>
    public IReadOnlyList<LedgerEntry> Entries { get; }

    /// <summary>SHA-256 of the logs and attachments that are at hand.</summary>
    public IReadOnlySet<string> Files { get; }

    public TimeZoneInfo Zone { get; }

    public DateTimeOffset MadeAt { get; }

    /// <summary>Entries of a record, oldest first.</summary>
    public IEnumerable<LedgerEntry> Of(Guid id) => _entries[id];

    public bool Holds(Guid id) => _records.ContainsKey(id) && _entries.Contains(id);

    /// <summary>The first entry whose record fits; null when none does.</summary>
    public LedgerEntry? First(Guid id, Func<JsonObject, bool> fits) =>
        Of(id).FirstOrDefault(e => fits(Content(e)));

    public static JsonObject Content(LedgerEntry entry) =>
        JsonNode.Parse(entry.Content)!.AsObject();
}
