using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>Compares the stored nodes of the tree, from which proofs are made, with those that follow from the entries.</summary>
internal sealed class NodeCheck(WeldTraceDbContext db, List<string> problems)
{
    public async Task CompareAsync(
        IReadOnlyList<MerkleNode> computed,
        CancellationToken cancellation
    )
    {
        var stored = await db.ReadNodesAsync(
            computed.Select(n => (n.Level, n.Index)),
            cancellation
        );
        problems.AddRange(
            computed
                .Where(n =>
                    !stored.TryGetValue((n.Level, n.Index), out var hash)
                    || !hash.AsSpan().SequenceEqual(n.Hash)
                )
                .Select(n =>
                    FormattableString.Invariant(
                        $"Node {n.Index} of level {n.Level} of the ledger's tree is missing or was changed."
                    )
                )
        );
    }

    /// <summary>No node may stand there that no entry gives.</summary>
    public async Task CountAsync(long treeSize, CancellationToken cancellation)
    {
        var expected = 0L;
        for (var size = treeSize; size > 0; size >>= 1)
        {
            expected += size;
        }

        var stored = await db.LedgerNodes.LongCountAsync(cancellation);
        if (stored > expected)
        {
            problems.Add(
                FormattableString.Invariant(
                    $"The ledger's tree has {stored - expected} more nodes than its entries give."
                )
            );
        }
    }
}
