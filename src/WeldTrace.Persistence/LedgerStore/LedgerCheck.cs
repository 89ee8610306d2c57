using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>What a check of the whole ledger found.</summary>
/// <param name="Entries">Entries read.</param>
/// <param name="Records">Records compared with their newest entry.</param>
/// <param name="Problems">Everything that is not as it was written, each named; empty when all is well.</param>
public sealed record LedgerReport(long Entries, int Records, IReadOnlyList<string> Problems);

/// <summary>Reads every entry and every record again and says what was changed, removed or added behind the program's back.</summary>
public static class LedgerCheck
{
    private const int Batch = 1000;

    public static async Task<LedgerReport> CheckLedgerAsync(
        this WeldTraceDbContext db,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        // Work goes on meanwhile: everything is read as it stood at one moment.
        return await db
            .Database.CreateExecutionStrategy()
            .ExecuteAsync(
                async token =>
                {
                    await using var snapshot = await db.Database.BeginSnapshotAsync(token);
                    return await CheckAsync(db, token);
                },
                cancellation
            );
    }

    private static async Task<LedgerReport> CheckAsync(
        WeldTraceDbContext db,
        CancellationToken cancellation
    )
    {
        List<string> problems = [];
        Dictionary<Guid, LedgerEntry> newest = [];
        var stored = MerkleFrontier.FromBytes(
            (await db.LedgerHeads.AsNoTracking().SingleAsync(cancellation)).Frontier
        );
        var computed = MerkleFrontier.Empty;
        for (var next = 0L; next < stored.Size; )
        {
            var rows = await db
                .LedgerEntries.AsNoTracking()
                .Where(e => e.Number >= next && e.Number < next + Batch)
                .OrderBy(e => e.Number)
                .ToListAsync(cancellation);
            foreach (var row in rows)
            {
                computed = Check(row, computed, newest, problems);
            }

            next += Batch;
        }

        CompareTree(stored, computed, problems);
        var records = await CompareRecordsAsync(db, newest, problems, cancellation);
        problems.AddRange(await FileCheck.FindProblemsAsync(db, newest.Values, cancellation));
        return new LedgerReport(computed.Size, records, problems);
    }

    private static MerkleFrontier Check(
        LedgerRow row,
        MerkleFrontier computed,
        Dictionary<Guid, LedgerEntry> newest,
        List<string> problems
    )
    {
        if (row.Number != computed.Size)
        {
            problems.Add(
                FormattableString.Invariant(
                    $"Ledger entry {computed.Size} is missing or out of order."
                )
            );
        }

        var bytes = System.Text.Encoding.UTF8.GetBytes(row.Entry);
        var leaf = MerkleTree.LeafHash(bytes);
        if (!leaf.AsSpan().SequenceEqual(row.LeafHash))
        {
            problems.Add(
                FormattableString.Invariant(
                    $"Ledger entry {row.Number} was changed: its text no longer gives its hash."
                )
            );
        }

        try
        {
            var entry = LedgerEntry.FromCanonicalBytes(bytes);
            newest[entry.RecordId] = entry;
        }
        catch (FormatException)
        {
            problems.Add(
                FormattableString.Invariant($"Ledger entry {row.Number} can't be read any more.")
            );
        }

        return computed.Append(leaf).Frontier;
    }

    private static void CompareTree(
        MerkleFrontier stored,
        MerkleFrontier computed,
        List<string> problems
    )
    {
        if (stored.Size != computed.Size)
        {
            problems.Add(
                FormattableString.Invariant(
                    $"The ledger should have {stored.Size} entries; {computed.Size} are there."
                )
            );
        }
        else if (!stored.Root().AsSpan().SequenceEqual(computed.Root()))
        {
            problems.Add("The root of the ledger is not the one that follows from its entries.");
        }
    }

    private static async Task<int> CompareRecordsAsync(
        WeldTraceDbContext db,
        Dictionary<Guid, LedgerEntry> newest,
        List<string> problems,
        CancellationToken cancellation
    )
    {
        HashSet<Guid> seen = [];
        foreach (var record in await EveryRecord.ReadAsync(db, seen, problems, cancellation))
        {
            seen.Add(record.Id);
            if (!newest.TryGetValue(record.Id, out var entry))
            {
                problems.Add(
                    $"{record.Kind} {record.Label} stands in the records but not in the ledger."
                );
            }
            else if (
                entry.RecordVersion != record.Version
                || entry.Content != RecordSnapshot.Of(record)
            )
            {
                problems.Add(
                    FormattableString.Invariant(
                        $"{record.Kind} {record.Label} differs from ledger entry {entry.Number}."
                    )
                );
            }
        }

        problems.AddRange(
            newest
                .Values.Where(e => !seen.Contains(e.RecordId))
                .Select(e =>
                    FormattableString.Invariant(
                        $"{e.RecordKind} {e.RecordId} of ledger entry {e.Number} is missing from the records."
                    )
                )
        );
        return seen.Count;
    }
}
