using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Persistence.Loading;

public static class ProductionLoading
{
    /// <summary>What happened on a machine, welding to a procedure revision, since its last production test.</summary>
    public static async Task<ProductionSince> LoadProductionSinceAsync(
        this WeldTraceDbContext db,
        Guid machine,
        Guid procedure,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var last = await db
            .ProductionTests.AsNoTracking()
            .Where(t => t.MachineId == machine && t.ProcedureRevisionId == procedure)
            .OrderByDescending(t => t.At)
            .FirstOrDefaultAsync(cancellation);
        var from = last?.At ?? DateTimeOffset.UnixEpoch;
        var runs = await db
            .WeldRuns.AsNoTracking()
            .Where(r =>
                r.MachineId == machine && r.ProcedureRevisionId == procedure && r.StartedAt >= from
            )
            .Select(r => new
            {
                r.Id,
                r.VesselId,
                r.StartedAt,
                r.PlannedPath,
                r.Travelled,
            })
            .ToListAsync(cancellation);
        var (ids, vessels) = (
            runs.Select(r => (Guid?)r.Id).ToList(),
            runs.Select(r => r.VesselId).Distinct().ToList()
        );
        // A run is the evidence of its own findings; a test speaks of the vessel.
        var origins = await db
            .Findings.Where(f =>
                f.OpenedAt >= from
                && (
                    ids.Contains(f.EvidenceId)
                    || (vessels.Contains(f.VesselId) && f.EvidenceKind != "weld-run")
                )
            )
            .Select(f => f.Origin)
            .Distinct()
            .ToListAsync(cancellation);
        return new ProductionSince(
            last,
            Length.FromSi(runs.Sum(r => (r.Travelled ?? r.PlannedPath).SiValue)),
            runs.Count == 0 ? null : runs.Min(r => r.StartedAt),
            origins
        );
    }
}
