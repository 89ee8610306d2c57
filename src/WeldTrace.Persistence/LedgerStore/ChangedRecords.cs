using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>The records that one save writes, and the form in which each goes into the ledger.</summary>
internal sealed class ChangedRecords
{
    private readonly List<Record> _records;

    private ChangedRecords(List<Record> records) => _records = records;

    public bool IsEmpty => _records.Count == 0;

    public IReadOnlyList<Record> All => _records;

    public IReadOnlyList<Finding> NewFindings =>
        [.. _records.OfType<Finding>().Where(f => f.Number == 0)];

    public static ChangedRecords Of(ChangeTracker tracker)
    {
        List<Record> changed = [];
        foreach (var entry in tracker.Entries<Record>())
        {
            if (entry.State == EntityState.Deleted)
            {
                throw new InvalidOperationException(
                    $"{entry.Entity.Kind} {entry.Entity.Id}: records are never deleted."
                );
            }

            if (
                entry.State is EntityState.Added or EntityState.Modified
                || entry.Entity.PendingActs.Count > 0
            )
            {
                changed.Add(entry.Entity);
            }
        }

        // In the order in which it was done; signatures last, since they hold the hash of what they sign.
        return new ChangedRecords([
            .. changed
                .OrderBy(r => r is Signature)
                .ThenBy(r => r.PendingActs.Count == 0 ? default : r.PendingActs[^1].At),
        ]);
    }

    /// <summary>Counts versions up and binds signatures; the records then have the form that is stored.</summary>
    public IReadOnlyList<PendingEntry> Prepare()
    {
        Dictionary<Guid, string> hashes = [];
        List<PendingEntry> entries = [];
        foreach (var record in _records)
        {
            record.CountVersion();
            if (record is Signature signature)
            {
                Bind(signature, hashes);
            }

            var content = RecordSnapshot.Of(record);
            hashes[record.Id] = RecordSnapshot.Sha256(content);
            entries.Add(new PendingEntry(record, content));
        }

        return entries;
    }

    public void Forget()
    {
        foreach (var record in _records)
        {
            record.ForgetPendingActs();
        }
    }

    private static void Bind(Signature signature, Dictionary<Guid, string> hashes)
    {
        var target =
            signature.Target
            ?? throw new InvalidOperationException("A signature is saved with what it signs.");
        var hash = hashes.TryGetValue(target.Id, out var saved)
            ? saved
            : RecordSnapshot.Sha256(target);
        signature.Bind(target.Version, hash);
    }
}
