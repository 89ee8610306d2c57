using System.Text;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>Reads the entries in order, builds the tree anew, and compares it with what is stored of it.</summary>
/// <param name="db">Where the ledger is.</param>
/// <param name="problems">Takes a sentence about everything that is not as it was written.</param>
/// <param name="sizes">Sizes at which the root is asked for.</param>
internal sealed class EntryCheck(
    WeldTraceDbContext db,
    List<string> problems,
    IReadOnlySet<long> sizes
)
{
    private const int Batch = 1024;

    /// <summary>The last entry of each record.</summary>
    public Dictionary<Guid, LedgerEntry> Newest { get; } = [];

    /// <summary>The tree that follows from the entries.</summary>
    public MerkleFrontier Tree { get; private set; } = MerkleFrontier.Empty;

    /// <summary>Its roots at the sizes that were asked for.</summary>
    public Dictionary<long, byte[]> Roots { get; } = [];

    public async Task ReadAsync(IProgress<LedgerProgress>? progress, CancellationToken cancellation)
    {
        var stored = MerkleFrontier.FromBytes(
            (await db.LedgerHeads.AsNoTracking().SingleAsync(cancellation)).Frontier
        );
        var nodes = new NodeCheck(db, problems);
        for (var next = 0L; next < stored.Size; next += Batch)
        {
            progress?.Report(new LedgerProgress("entries", next, stored.Size));
            var end = Math.Min(next + Batch, stored.Size);
            await nodes.CompareAsync(await AppendAsync(next, end, cancellation), cancellation);
        }

        if (!stored.Root().AsSpan().SequenceEqual(Tree.Root()))
        {
            problems.Add("The root of the ledger is not the one that follows from its entries.");
        }

        await nodes.CountAsync(Tree.Size, cancellation);
        await FindSurplusAsync(stored.Size, cancellation);
    }

    private async Task<List<MerkleNode>> AppendAsync(
        long begin,
        long end,
        CancellationToken cancellation
    )
    {
        var rows = await db
            .LedgerEntries.AsNoTracking()
            .Where(e => e.Number >= begin && e.Number < end)
            .ToDictionaryAsync(e => e.Number, cancellation);
        var leaves = await LeavesOfMissingAsync(rows, begin, end, cancellation);
        List<MerkleNode> completed = [];
        for (var number = begin; number < end; number++)
        {
            var leaf = rows.TryGetValue(number, out var row)
                ? LeafOf(row)
                : leaves.GetValueOrDefault((0, number), MerkleTree.EmptyRoot());
            (Tree, var nodes) = Tree.Append(leaf);
            completed.AddRange(nodes);
            if (sizes.Contains(Tree.Size))
            {
                Roots[Tree.Size] = Tree.Root();
            }
        }

        return completed;
    }

    // The stored leaf stands in for a missing entry, so that what comes after it is still compared for itself.
    private async Task<Dictionary<(int Level, long Index), byte[]>> LeavesOfMissingAsync(
        Dictionary<long, LedgerRow> rows,
        long begin,
        long end,
        CancellationToken cancellation
    )
    {
        List<long> missing = [];
        for (var number = begin; number < end; number++)
        {
            if (!rows.ContainsKey(number))
            {
                missing.Add(number);
                problems.Add(FormattableString.Invariant($"Ledger entry {number} is missing."));
            }
        }

        return missing.Count == 0
            ? []
            : await db.ReadNodesAsync(missing.Select(n => (0, n)), cancellation);
    }

    private byte[] LeafOf(LedgerRow row)
    {
        var bytes = Encoding.UTF8.GetBytes(row.Entry);
        var leaf = MerkleTree.LeafHash(bytes);
        if (!leaf.AsSpan().SequenceEqual(row.LeafHash))
        {
            problems.Add(
                FormattableString.Invariant(
                    $"Ledger entry {row.Number} was changed: its text no longer gives its hash."
                )
            );
        }

        Read(row, bytes);
        return leaf;
    }

    private void Read(LedgerRow row, byte[] bytes)
    {
        try
        {
            var entry = LedgerEntry.FromCanonicalBytes(bytes);
            Newest[entry.RecordId] = entry;
            if (!IsFiledAs(entry, row))
            {
                problems.Add(
                    FormattableString.Invariant(
                        $"Ledger entry {row.Number} is filed under another number, record, vessel or time than its text says."
                    )
                );
            }
        }
        catch (FormatException)
        {
            problems.Add(
                FormattableString.Invariant($"Ledger entry {row.Number} can't be read any more.")
            );
        }
    }

    private static bool IsFiledAs(LedgerEntry entry, LedgerRow row) =>
        entry.Number == row.Number
        && entry.At == row.At
        && entry.RecordKind == row.RecordKind
        && entry.RecordId == row.RecordId
        && entry.RecordVersion == row.RecordVersion
        && entry.Vessels.SequenceEqual(row.Vessels);

    private async Task FindSurplusAsync(long size, CancellationToken cancellation)
    {
        var surplus = await db
            .LedgerEntries.Where(e => e.Number < 0 || e.Number >= size)
            .Select(e => e.Number)
            .ToListAsync(cancellation);
        problems.AddRange(
            surplus.Select(n =>
                FormattableString.Invariant($"Ledger entry {n} stands outside the ledger's tree.")
            )
        );
    }
}
