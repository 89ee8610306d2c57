using System.Text;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>A ledger entry with the path that proves it.</summary>
public sealed record ProvedEntry(LedgerEntry Entry, IReadOnlyList<byte[]> Path);

/// <summary>Part of the ledger, with the size and root that its proofs lead to.</summary>
public sealed record LedgerPart(IReadOnlyList<ProvedEntry> Entries, long Size, byte[] Root);

public static class LedgerReading
{
    /// <summary>Every entry of some records, each with its proof against the ledger as it is now.</summary>
    public static async Task<LedgerPart> ReadLedgerAsync(
        this WeldTraceDbContext db,
        IReadOnlyCollection<Guid> recordIds,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var head = await db.LedgerHeads.AsNoTracking().SingleAsync(cancellation);
        var frontier = MerkleFrontier.FromBytes(head.Frontier);
        var rows = await db
            .LedgerEntries.AsNoTracking()
            .Where(e => recordIds.Contains(e.RecordId) && e.Number < frontier.Size)
            .OrderBy(e => e.Number)
            .ToListAsync(cancellation);
        var nodes = await db.ReadNodesAsync(
            rows.SelectMany(r => MerkleProofs.InclusionNodes(r.Number, frontier.Size)),
            cancellation
        );
        return new LedgerPart(
            [
                .. rows.Select(r => new ProvedEntry(
                    Read(r),
                    MerkleProofs.Inclusion(
                        r.Number,
                        frontier.Size,
                        (level, index) => nodes[(level, index)]
                    )
                )),
            ],
            frontier.Size,
            frontier.Root()
        );
    }

    /// <summary>The entry of a row.</summary>
    public static LedgerEntry Read(LedgerRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return LedgerEntry.FromCanonicalBytes(Encoding.UTF8.GetBytes(row.Entry));
    }

    /// <summary>Stored nodes of the tree; one that is missing is not in the answer.</summary>
    internal static async Task<Dictionary<(int Level, long Index), byte[]>> ReadNodesAsync(
        this WeldTraceDbContext db,
        IEnumerable<(int Level, long Index)> wanted,
        CancellationToken cancellation
    )
    {
        Dictionary<(int, long), byte[]> nodes = [];
        foreach (var level in wanted.Distinct().GroupBy(n => n.Level))
        {
            var positions = level.Select(n => n.Index).ToList();
            var found = await db
                .LedgerNodes.AsNoTracking()
                .Where(n => n.Level == level.Key && positions.Contains(n.Position))
                .ToListAsync(cancellation);
            foreach (var node in found)
            {
                nodes[(node.Level, node.Position)] = node.Hash;
            }
        }

        return nodes;
    }
}
