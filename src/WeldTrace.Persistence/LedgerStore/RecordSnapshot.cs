using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>A record as canonical JSON: what the ledger holds, what signatures are bound to, what a bundle exports.</summary>
public static class RecordSnapshot
{
    public static string Of(Record record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var json = JsonSerializer.SerializeToUtf8Bytes(
            record,
            record.GetType(),
            DomainJson.Options
        );
        return Encoding.UTF8.GetString(CanonicalJson.FromText(json));
    }

    public static string Sha256(string snapshot) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(snapshot)));

    public static string Sha256(Record record) => Sha256(Of(record));
}
