using WeldTrace.Documents.Bundle;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify.Tests;

/// <summary>A small ledger of two vessels, as an invented workshop could have written it.</summary>
internal sealed class SampleLedger
{
    public static readonly Guid Vessel = Id(0xa);
    public static readonly Guid OtherVessel = Id(0xb);
    private static readonly DateTimeOffset Start = new(2026, 3, 2, 8, 0, 0, TimeSpan.Zero);
    private readonly List<LedgerEntry> _entries = [];
    private readonly Dictionary<(int, long), byte[]> _nodes = [];
    private MerkleFrontier _frontier = MerkleFrontier.Empty;

    public IReadOnlyList<LedgerEntry> Entries => _entries;

    public static Guid Id(int number) => new($"0198c0de-0000-7000-8000-{number:x12}");

    public SampleLedger Append(
        string act,
        string kind,
        int id,
        int version,
        string content,
        Guid on
    )
    {
        var entry = new LedgerEntry
        {
            Number = _entries.Count,
            At = Start.AddMinutes(_entries.Count),
            ActorId = Id(1),
            ActorName = "Ewa Nowak",
            Act = act,
            Reason = version > 1 ? "Typing error" : null,
            RecordKind = kind,
            RecordId = Id(id),
            RecordVersion = version,
            Vessels = [on],
            Content = content,
        };
        _entries.Add(entry);
        (_frontier, var completed) = _frontier.Append(entry.LeafHash());
        foreach (var node in completed)
        {
            _nodes.Add((node.Level, node.Index), node.Hash);
        }
        return this;
    }

    public Checkpoint Checkpoint(string site) =>
        new()
        {
            SiteName = site,
            TreeSize = _frontier.Size,
            RootHex = Convert.ToHexStringLower(_frontier.Root()),
            At = Start.AddHours(8),
        };

    public IReadOnlyList<BundledEntry> Of(Guid vessel) =>
        [
            .. _entries
                .Where(entry => entry.Vessels.Contains(vessel))
                .Select(entry => new BundledEntry(entry, Proof(entry.Number))),
        ];

    public IReadOnlyList<byte[]> Proof(long number) =>
        MerkleProofs.Inclusion(number, _frontier.Size, (level, index) => _nodes[(level, index)]);
}
