using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.ProcessLogStore;

namespace WeldTrace.Web.Features.Welding;

/// <summary>Loads a run for showing.</summary>
public sealed class RunReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    /// <summary>The run; null when there is none.</summary>
    public async Task<RunView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindRunAsync(id, cancellation) is not { } records)
        {
            return null;
        }

        return new RunView
        {
            Records = records,
            Header = await db.FindLogHeaderAsync(id, cancellation),
            OriginalAttachment = await db
                .ProcessLogs.Where(l => l.RunId == id)
                .Select(l => l.OriginalAttachment)
                .SingleOrDefaultAsync(cancellation),
            Indications = await IndicationsAsync(db, records, cancellation),
            Findings = await db.FindingsOfRunAsync(id, cancellation),
            SignalReviews = await db
                .SignalReviews.AsNoTracking()
                .Where(r => r.RunId == id)
                .OrderBy(r => r.At)
                .ToListAsync(cancellation),
            Signatures = await db
                .Signatures.AsNoTracking()
                .Where(s => s.SignedId == id)
                .OrderBy(s => s.At)
                .ToListAsync(cancellation),
        };
    }

    private static async Task<IReadOnlyList<SeamIndication>> IndicationsAsync(
        WeldTraceDbContext db,
        RunRecords records,
        CancellationToken cancellation
    )
    {
        var vessel = records.Run.VesselId;
        return new IndicationsOnSeam(records.Run, records.Pass).Of(
            await db
                .Sections.AsNoTracking()
                .Where(s => s.VesselId == vessel)
                .ToListAsync(cancellation),
            await db
                .StepSignOffs.AsNoTracking()
                .Where(s => s.VesselId == vessel)
                .ToListAsync(cancellation),
            await db
                .LeakTests.AsNoTracking()
                .Where(t => t.VesselId == vessel)
                .ToListAsync(cancellation),
            await db
                .Findings.AsNoTracking()
                .Where(f => f.VesselId == vessel)
                .ToListAsync(cancellation)
        );
    }
}
