using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>The ledger no longer begins with what an earlier checkpoint vouches for.</summary>
public sealed class BrokenLedgerException(long treeSize)
    : Exception(
        FormattableString.Invariant(
            $"The ledger no longer begins with the {treeSize} entries that an earlier checkpoint was signed for. No checkpoint is signed. Check the whole ledger, and compare with the last backup."
        )
    )
{
    /// <summary>Entries of the earlier checkpoint.</summary>
    public long TreeSize { get; } = treeSize;
}

public static class CheckpointStore
{
    /// <summary>Signs the ledger as it is now; gives the newest checkpoint when nothing came since.</summary>
    /// <exception cref="BrokenLedgerException">The tree does not extend the one signed last.</exception>
    public static async Task<CheckpointRow> TakeCheckpointAsync(
        this WeldTraceDbContext db,
        SiteKey key,
        string siteName,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(key);
        var last = await db.FindCheckpointAsync(cancellation);
        var tree = MerkleFrontier.FromBytes(
            (await db.LedgerHeads.AsNoTracking().SingleAsync(cancellation)).Frontier
        );
        if (last is not null)
        {
            await RequireExtendedAsync(db, last.Read(), tree, cancellation);
            if (last.TreeSize == tree.Size)
            {
                return last;
            }
        }

        var signed = key.Sign(
            new Checkpoint
            {
                SiteName = siteName,
                TreeSize = tree.Size,
                RootHex = Convert.ToHexStringLower(tree.Root()),
                At = at,
            }
        );
        var row = CheckpointRow.Of(signed, key.PublicKey);
        await db.KeepCheckpointAsync(row, cancellation);
        return row;
    }

    /// <summary>The newest checkpoint; null before the first.</summary>
    public static Task<CheckpointRow?> FindCheckpointAsync(
        this WeldTraceDbContext db,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return db
            .Checkpoints.AsNoTracking()
            .OrderByDescending(c => c.TreeSize)
            .FirstOrDefaultAsync(cancellation);
    }

    /// <summary>Keeps a checkpoint that was signed; one of the same size that is there already stays.</summary>
    public static Task KeepCheckpointAsync(
        this WeldTraceDbContext db,
        CheckpointRow row,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(row);
        return db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO checkpoints (tree_size, at, statement, signature, public_key_pem)
            VALUES ({row.TreeSize}, {row.At}, {row.Statement}, {row.Signature}, {row.PublicKeyPem})
            ON CONFLICT DO NOTHING
            """,
            cancellation
        );
    }

    private static async Task RequireExtendedAsync(
        WeldTraceDbContext db,
        Checkpoint last,
        MerkleFrontier tree,
        CancellationToken cancellation
    )
    {
        if (!await ExtendsAsync(db, last, tree, cancellation))
        {
            throw new BrokenLedgerException(last.TreeSize);
        }
    }

    private static async Task<bool> ExtendsAsync(
        WeldTraceDbContext db,
        Checkpoint last,
        MerkleFrontier tree,
        CancellationToken cancellation
    )
    {
        if (last.TreeSize == 0 || last.TreeSize > tree.Size)
        {
            return last.TreeSize == 0;
        }

        var nodes = await db.ReadNodesAsync(
            MerkleProofs.ConsistencyNodes(last.TreeSize, tree.Size),
            cancellation
        );
        var path = MerkleProofs.Consistency(
            last.TreeSize,
            tree.Size,
            (level, index) => nodes.GetValueOrDefault((level, index), [])
        );
        return MerkleVerification.Consistency(
            last.TreeSize,
            tree.Size,
            path,
            last.Root(),
            tree.Root()
        );
    }
}
