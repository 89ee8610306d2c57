using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Ledger;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Archive.ArchiveVessel;

/// <summary>What archiving a vessel would mean.</summary>
/// <param name="Vessel">Vessel.</param>
/// <param name="Retention">Until when its records are kept.</param>
/// <param name="Contents">What would leave the database.</param>
/// <param name="Bytes">How many bytes that are.</param>
/// <param name="Archives">What has left it already.</param>
/// <param name="Signatures">Signatures of those archives.</param>
/// <param name="LastEntry">Number of the newest ledger entry that speaks of it.</param>
public sealed record ArchiveView(
    Vessel Vessel,
    Retention Retention,
    ArchiveContents Contents,
    long Bytes,
    IReadOnlyList<VesselArchive> Archives,
    IReadOnlyList<Signature> Signatures,
    long LastEntry
);

public sealed class ArchiveReader(IDbContextFactory<WeldTraceDbContext> contexts, SiteReader sites)
{
    /// <summary>The vessel of a serial number; null when there is none.</summary>
    public async Task<ArchiveView?> FindAsync(string serial, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var history = await db.FindVesselHistoryAsync(serial, cancellation);
        if (history is null)
        {
            return null;
        }

        var (contents, bytes) = await ContentsAsync(db, history, cancellation);
        return new(
            history.Vessel,
            await RetentionAsync(db, history, cancellation),
            contents,
            bytes,
            history.Archives,
            [.. history.Archives.SelectMany(history.SignaturesOf)],
            await db
                .LedgerEntries.Where(e => e.Vessels.Contains(history.Vessel.Id))
                .MaxAsync(e => e.Number, cancellation)
        );
    }

    private async Task<Retention> RetentionAsync(
        WeldTraceDbContext db,
        VesselHistory history,
        CancellationToken cancellation
    )
    {
        var vessel = history.Vessel;
        var together = vessel.LotId is { } lot
            ? await db
                .Vessels.Where(v => v.LotId == lot)
                .Select(v => v.Id)
                .ToListAsync(cancellation)
            : [vessel.Id];

        // That a vessel was archived doesn't make its records young again, nor those of its lot.
        var lastAct = await db
            .LedgerEntries.Where(e =>
                e.Vessels.Any(v => together.Contains(v))
                && e.RecordKind != "vessel-archive"
                && !db.Signatures.Any(s => s.Id == e.RecordId && s.SignedKind == "vessel-archive")
            )
            .MaxAsync(e => e.At, cancellation);
        var site = await sites.GetAsync(cancellation);
        return Retention.Of(
            vessel,
            new RetentionFacts(
                site.DayOf(lastAct),
                history.Runs.Any(r => r.Repair is not null),
                history.Findings.Count(f => f.State != FindingState.Closed),
                site.RetentionYears
            )
        );
    }

    // What records of other vessels or of the workshop name too, a certificate for instance, stays.
    private static async Task<(ArchiveContents Contents, long Bytes)> ContentsAsync(
        WeldTraceDbContext db,
        VesselHistory history,
        CancellationToken cancellation
    )
    {
        var named = history
            .Records.Where(r => r.ConcernedVessels is [var only] && only == history.Vessel.Id)
            .SelectMany(r => NamedHashes.In(RecordSnapshot.Of(r)).Attachments)
            .Distinct()
            .ToList();
        var files = await db
            .Attachments.Where(a => named.Contains(a.Sha256) && a.ArchiveId == null)
            .OrderBy(a => a.Sha256)
            .Select(a => new { a.Sha256, a.Length })
            .ToListAsync(cancellation);
        var runs = history.Runs.Where(r => r.Log is not null).ToDictionary(r => r.Id);
        var logs = await db
            .ProcessLogs.Where(l => runs.Keys.Contains(l.RunId) && l.ArchiveId == null)
            .OrderBy(l => l.RunId)
            .Select(l => new
            {
                l.RunId,
                Bytes = db
                    .ProcessLogChunks.Where(c => c.RunId == l.RunId)
                    .Sum(c => (long)c.Bytes.Length),
            })
            .ToListAsync(cancellation);
        return (
            new ArchiveContents(
                [.. files.Select(f => f.Sha256)],
                [.. logs.Select(l => new ArchivedLog(l.RunId, runs[l.RunId].Log!.CsvSha256))]
            ),
            files.Sum(f => f.Length) + logs.Sum(l => l.Bytes)
        );
    }
}
