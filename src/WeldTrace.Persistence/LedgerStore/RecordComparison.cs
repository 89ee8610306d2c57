using WeldTrace.Domain.Ledger;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>Compares every record with its newest ledger entry, and every entry's record with what is there.</summary>
internal static class RecordComparison
{
    public static async Task<int> CompareAsync(
        WeldTraceDbContext db,
        Dictionary<Guid, LedgerEntry> newest,
        List<string> problems,
        IProgress<LedgerProgress>? progress,
        CancellationToken cancellation
    )
    {
        progress?.Report(new LedgerProgress("records", 0, newest.Count));
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
