using System.Security.Cryptography;
using System.Text;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>What the checks need of the ledger entries, and no more.</summary>
internal sealed class LedgerFacts
{
    private readonly Dictionary<long, byte[]> _leafHashes = [];
    private readonly Dictionary<string, NewestEntry> _newest = new(StringComparer.Ordinal);
    private readonly HashSet<string> _named = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<long, byte[]> LeafHashes => _leafHashes;

    /// <summary>The newest entry of each record, by the path of the record.</summary>
    public IReadOnlyDictionary<string, NewestEntry> Newest => _newest;

    public void Add(LedgerEntry entry)
    {
        _leafHashes[entry.Number] = entry.LeafHash();
        var named = NamedHashes.In(entry.Content);
        _named.UnionWith(named.Attachments.Select(hash => "attachments/" + hash));
        _named.UnionWith(named.Logs.Select(hash => "logs/" + hash));
        var path = BundlePaths.Record(entry.RecordKind, entry.RecordId);
        if (_newest.TryGetValue(path, out var known) && known.Number > entry.Number)
        {
            return;
        }
        var content = SHA256.HashData(Encoding.UTF8.GetBytes(entry.Content));
        _newest[path] = new NewestEntry(
            entry.Number,
            Convert.ToHexStringLower(content),
            named,
            entry.Vessels.ToHashSet()
        );
    }

    /// <summary>Whether any entry, old or new, names a file of that hash.</summary>
    /// <param name="folder">"attachments/" or "logs/".</param>
    /// <param name="sha256">Hash of the file.</param>
    public bool Names(string folder, string sha256) => _named.Contains(folder + sha256);
}

/// <summary>The newest entry of a record.</summary>
internal sealed record NewestEntry(
    long Number,
    string ContentSha256,
    NamedHashes Named,
    IReadOnlySet<Guid> Vessels
);
