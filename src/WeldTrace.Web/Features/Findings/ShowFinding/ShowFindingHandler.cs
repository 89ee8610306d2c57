using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Findings.ShowFinding;

/// <summary>A finding with what stands around it.</summary>
public sealed record ShownFinding(
    Finding Finding,
    Vessel Vessel,
    VesselDesign Design,
    IReadOnlyList<Signature> Signatures,
    IReadOnlyCollection<Guid> WeldedBy,
    IReadOnlyList<ProcedureRevision> Procedures
);

public sealed class ShowFindingHandler(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<ShownFinding?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (
            await db.Findings.SingleOrDefaultAsync(f => f.Id == id, cancellation) is not { } finding
        )
        {
            return null;
        }

        var vessel = await db.Vessels.SingleAsync(v => v.Id == finding.VesselId, cancellation);
        return new ShownFinding(
            finding,
            vessel,
            await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation),
            await db
                .Signatures.Where(s => s.SignedId == id)
                .OrderBy(s => s.At)
                .ToListAsync(cancellation),
            await db.WhoWeldedAsync(vessel.Id, cancellation),
            await db
                .ProcedureRevisions.Where(p => p.State == ProcedureState.Released)
                .OrderBy(p => p.Number)
                .ToListAsync(cancellation)
        );
    }
}
