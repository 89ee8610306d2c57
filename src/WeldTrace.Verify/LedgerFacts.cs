using System.Security.Cryptography;
using System.Text;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>What the checks need of the ledger entries, and no more.</summary>
internal sealed class LedgerFacts
{
    private readonly Dictionary<long, byte[]> _leafHashes = [];
    private readonly Dictionary<string, NewestEntry> _newest = new(StringComparer.Ordinal);
    private readonly HashSet<(Guid Record, int Version)> _versions = [];
    private readonly HashSet<Guid> _actors = [];
    private readonly HashSet<string> _named = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<long, byte[]> LeafHashes => _leafHashes;

    /// <summary>The newest entry of each record, by the path of the record.</summary>
    public IReadOnlyDictionary<string, NewestEntry> Newest => _newest;

    public void Add(LedgerEntry entry)
    {
        _leafHashes[entry.Number] = entry.LeafHash();
        _versions.Add((entry.RecordId, entry.RecordVersion));
        _actors.Add(entry.ActorId);
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

    /// <summary>Whether any entry is of that version of the record; of any version when none is given, or by that person.</summary>
    /// <param name="id">Record or person.</param>
    /// <param name="version">Version; null for any.</param>
    public bool Knows(Guid id, int? version) =>
        version is { } one
            ? _versions.Contains((id, one))
            : _versions.Contains((id, 1)) || _actors.Contains(id);

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
