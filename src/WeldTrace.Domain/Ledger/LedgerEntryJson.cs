using System.Globalization;
using System.Text;
using System.Text.Json;

namespace WeldTrace.Domain.Ledger;

/// <summary>The canonical form of an entry.</summary>
internal static class LedgerEntryJson
{
    // Room for the largest content and the members around it.
    private static readonly JsonLimits Limits = new(
        JsonLimits.ForRecords.MaximumBytes + 1024 * 1024,
        JsonLimits.ForRecords.MaximumDepth + 1
    );

    // Members stand in their canonical order; a test holds this to CanonicalJson.
    public static byte[] Write(LedgerEntry entry)
    {
        var json = new CanonicalJsonWriter();
        json.Raw("{\"act\":"u8);
        json.String(entry.Act);
        json.Raw(",\"actorId\":"u8);
        json.String(Text(entry.ActorId));
        json.Raw(",\"actorName\":"u8);
        json.String(entry.ActorName);
        json.Raw(",\"at\":"u8);
        json.String(LedgerTime.Print(entry.At));
        json.Raw(",\"content\":"u8);
        json.Raw(Encoding.UTF8.GetBytes(entry.Content));
        json.Raw(",\"format\":\"weldtrace-entry-1\",\"number\":"u8);
        json.Raw(entry.Number.ToString(CultureInfo.InvariantCulture));
        json.Raw(",\"reason\":"u8);
        json.NullableString(entry.Reason);
        json.Raw(",\"recordId\":"u8);
        json.String(Text(entry.RecordId));
        json.Raw(",\"recordKind\":"u8);
        json.String(entry.RecordKind);
        json.Raw(",\"recordVersion\":"u8);
        json.Raw(entry.RecordVersion.ToString(CultureInfo.InvariantCulture));
        json.Raw(",\"vessels\":["u8);
        json.Raw(string.Join(',', entry.Vessels.Select(vessel => $"\"{Text(vessel)}\"")));
        json.Raw("]}"u8);
        return json.ToArray();
    }

    public static LedgerEntry Read(ReadOnlyMemory<byte> utf8) =>
        CanonicalDocument.Read(utf8, Limits, Read, Write);

    private static LedgerEntry Read(JsonElement json) =>
        new()
        {
            Number = json.GetProperty("number").GetInt64(),
            At = LedgerTime.Read(json.Text("at")),
            ActorId = json.GetProperty("actorId").GetGuid(),
            ActorName = json.Text("actorName"),
            Act = json.Text("act"),
            Reason = json.GetProperty("reason").GetString(),
            RecordKind = json.Text("recordKind"),
            RecordId = json.GetProperty("recordId").GetGuid(),
            RecordVersion = json.GetProperty("recordVersion").GetInt32(),
            Vessels = [.. json.GetProperty("vessels").EnumerateArray().Select(v => v.GetGuid())],
            Content = json.GetProperty("content").GetRawText(),
        };

    private static string Text(Guid id) => id.ToString("D", CultureInfo.InvariantCulture);
}
