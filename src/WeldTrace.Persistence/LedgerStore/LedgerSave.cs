using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>Writes changed records and their ledger entries in one transaction, numbered without gaps.</summary>
internal static class LedgerSave
{
    public static async Task<int> RunAsync(
        WeldTraceDbContext db,
        ChangedRecords records,
        Func<CancellationToken, Task> copySamples,
        Func<CancellationToken, Task<int>> saveRecords,
        CancellationToken cancellation
    )
    {
        List<PendingEntry>? pending = null;
        var written = 0;
        if (db.Database.CurrentTransaction is not null)
        {
            throw new InvalidOperationException("A save makes its own transaction.");
        }

        await db
            .Database.CreateExecutionStrategy()
            .ExecuteInTransactionAsync(
                async token =>
                {
                    // Samples need no number: a long log does not keep the other writers waiting.
                    await copySamples(token);
                    var frontier = await LockAsync(db, token);
                    if (pending is null)
                    {
                        await NumberFindingsAsync(db, records, token);
                        pending = [.. records.Prepare()];
                        MarkChanged(db, records);
                    }

                    written = await saveRecords(token);
                    await AppendAsync(db, frontier, pending, token);
                },
                token => IsWrittenAsync(db, pending, token),
                cancellation
            );
        db.ChangeTracker.AcceptAllChanges();
        records.Forget();
        return written;
    }

    // The single head row puts all writers in one line, so that numbers have no gaps and leaves no wrong neighbours.
    private static async Task<MerkleFrontier> LockAsync(
        WeldTraceDbContext db,
        CancellationToken cancellation
    )
    {
        var frontier = await db
            .Database.SqlQuery<byte[]>(
                $"SELECT frontier AS \"Value\" FROM ledger_head WHERE id = {LedgerHead.OnlyId} FOR UPDATE"
            )
            .ToListAsync(cancellation);
        return MerkleFrontier.FromBytes(frontier.Single());
    }

    private static async Task NumberFindingsAsync(
        WeldTraceDbContext db,
        ChangedRecords records,
        CancellationToken cancellation
    )
    {
        if (records.NewFindings.Count == 0)
        {
            return;
        }

        var last =
            await db.Findings.AsNoTracking().MaxAsync(f => (int?)f.Number, cancellation) ?? 0;
        foreach (var finding in records.NewFindings)
        {
            finding.GiveNumber(++last);
        }
    }

    private static void MarkChanged(WeldTraceDbContext db, ChangedRecords records)
    {
        foreach (var record in records.All)
        {
            var entry = db.Entry(record);
            if (entry.State == EntityState.Unchanged)
            {
                entry.Property(r => r.Version).IsModified = true;
            }
        }
    }

    private static async Task AppendAsync(
        WeldTraceDbContext db,
        MerkleFrontier frontier,
        List<PendingEntry> pending,
        CancellationToken cancellation
    )
    {
        foreach (var entry in pending.Select((p, i) => p.Numbered(frontier.Size + i)).ToList())
        {
            var bytes = entry.ToCanonicalBytes();
            var leaf = MerkleTree.LeafHash(bytes);
            var text = System.Text.Encoding.UTF8.GetString(bytes);
            var vessels = entry.Vessels.ToArray();
            await db.Database.ExecuteSqlAsync(
                $"""
                INSERT INTO ledger_entries (number, record_kind, record_id, record_version, vessels, at, entry, leaf_hash)
                VALUES ({entry.Number}, {entry.RecordKind}, {entry.RecordId}, {entry.RecordVersion}, {vessels}, {entry.At}, {text}, {leaf})
                """,
                cancellation
            );
            (frontier, var completed) = frontier.Append(leaf);
            foreach (var node in completed)
            {
                await db.Database.ExecuteSqlAsync(
                    $"INSERT INTO ledger_nodes (level, position, hash) VALUES ({node.Level}, {node.Index}, {node.Hash})",
                    cancellation
                );
            }
        }

        await db.Database.ExecuteSqlAsync(
            $"UPDATE ledger_head SET frontier = {frontier.ToBytes()} WHERE id = {LedgerHead.OnlyId}",
            cancellation
        );
    }

    private static async Task<bool> IsWrittenAsync(
        WeldTraceDbContext db,
        List<PendingEntry>? pending,
        CancellationToken cancellation
    )
    {
        if (pending is null or [])
        {
            return false;
        }

        var (id, version) = (pending[0].Record.Id, pending[0].Record.Version);
        return await db
            .LedgerEntries.AsNoTracking()
            .AnyAsync(e => e.RecordId == id && e.RecordVersion == version, cancellation);
    }
}
