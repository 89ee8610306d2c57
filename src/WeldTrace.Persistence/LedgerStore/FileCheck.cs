using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Persistence.LedgerStore;

/// <summary>Reads every photograph, paper and process log again and compares it with the hash by which a record names it.</summary>
internal static class FileCheck
{
    public static async Task<IReadOnlyList<string>> FindProblemsAsync(
        WeldTraceDbContext db,
        IEnumerable<LedgerEntry> newest,
        IProgress<LedgerProgress>? progress,
        CancellationToken cancellation
    )
    {
        var named = newest
            .Select(e => (Entry: e, Hashes: NamedHashes.In(e.Content)))
            .Where(n => n.Hashes.Attachments.Count + n.Hashes.Logs.Count > 0)
            .ToList();
        var archives = await ArchiveCheck.ReadAsync(db, progress, cancellation);
        return
        [
            .. archives.Problems,
            .. await ComparePapersAsync(db, archives, named, cancellation),
            .. await CompareLogsAsync(db, archives, named, progress, cancellation),
        ];
    }

    private static async Task<IReadOnlyList<string>> ComparePapersAsync(
        WeldTraceDbContext db,
        ArchiveCheck archives,
        IReadOnlyList<(LedgerEntry Entry, NamedHashes Hashes)> named,
        CancellationToken cancellation
    )
    {
        // The database computes the hashes, so that no paper has to travel.
        var kept = await db
            .Database.SqlQuery<KeptPaper>(
                $"SELECT sha256, encode(sha256(bytes), 'hex') AS computed, length(bytes) AS length, archive_id FROM attachments"
            )
            .ToListAsync(cancellation);
        var known = kept.Select(k => k.Sha256).ToHashSet(StringComparer.Ordinal);
        var originals = await db
            .ProcessLogs.Where(l => l.OriginalAttachment != null)
            .Select(l => l.OriginalAttachment!)
            .ToListAsync(cancellation);
        return
        [
            .. kept.Where(k => !k.IsUnchanged(archives))
                .Select(k =>
                    $"The file {k.Sha256} was changed: its bytes no longer give its hash."
                ),
            .. named.SelectMany(n =>
                n.Hashes.Attachments.Where(h => !known.Contains(h))
                    .Select(h => $"The file {h}, named by {NameOf(n.Entry)}, is missing.")
            ),
            .. originals
                .Where(h => !known.Contains(h))
                .Select(h => $"The file {h}, the original of a process log, is missing."),
        ];
    }

    private static async Task<IReadOnlyList<string>> CompareLogsAsync(
        WeldTraceDbContext db,
        ArchiveCheck archives,
        IReadOnlyList<(LedgerEntry Entry, NamedHashes Hashes)> named,
        IProgress<LedgerProgress>? progress,
        CancellationToken cancellation
    )
    {
        List<string> problems = [];
        var owners = named
            .Where(n => n.Hashes.Logs.Count > 0)
            .ToDictionary(n => n.Entry.RecordId, n => n);
        var kept = await db
            .ProcessLogs.Select(l => new { l.RunId, l.ArchiveId })
            .ToListAsync(cancellation);
        for (var read = 0; read < kept.Count; read++)
        {
            var id = kept[read].RunId;
            progress?.Report(new LedgerProgress("process logs", read, kept.Count));
            if (!owners.Remove(id, out var owner))
            {
                problems.Add($"A process log of {id} is kept that no record names.");
            }
            else if (
                (
                    kept[read].ArchiveId is { } archive
                        ? archives.LogOf(archive, id) ?? ""
                        : await HashAsync(db, id, cancellation)
                )
                    is var hash
                && !owner.Hashes.Logs.Contains(hash)
            )
            {
                problems.Add($"The process log of {NameOf(owner.Entry)} was changed.");
            }
        }

        problems.AddRange(
            owners.Values.Select(o => $"The process log of {NameOf(o.Entry)} is missing.")
        );
        return problems;
    }

    private static async Task<string> HashAsync(
        WeldTraceDbContext db,
        Guid id,
        CancellationToken cancellation
    )
    {
        try
        {
            var log = await db.FindProcessLogAsync(id, cancellation);
            return await ProcessLogExport.WriteCsvAsync(log!, Stream.Null, cancellation);
        }
        catch (Exception unreadable)
            when (unreadable
                    is not OperationCanceledException
                        and not System.Data.Common.DbException
            )
        {
            // Changed so that it no longer reads: as good as any other change.
            return "";
        }
    }

    private static string NameOf(LedgerEntry entry) =>
        FormattableString.Invariant($"{entry.RecordKind} of ledger entry {entry.Number}");

    private sealed record KeptPaper(string Sha256, string Computed, int Length, Guid? ArchiveId)
    {
        /// <summary>An archived file has left no bytes here, and its archive was written for it.</summary>
        public bool IsUnchanged(ArchiveCheck archives) =>
            ArchiveId is { } archive
                ? Length == 0 && archives.Holds(archive, Sha256)
                : Sha256 == Computed;
    }
}
