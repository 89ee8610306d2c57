using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Procedures;

/// <summary>A procedure revision with everything its page shows.</summary>
public sealed record ProcedureView(
    ProcedureRevision Revision,
    ProcedureObjects Behind,
    IReadOnlyList<ProcedureRevision> Revisions,
    IReadOnlyList<Signature> Signatures,
    IReadOnlyList<QualificationRecord> Qualifications,
    IReadOnlyList<Vessel> VesselsWelded,
    MeasuredPin? Pin,
    IReadOnlyList<DrawnJoint> Drawn
)
{
    public ToolDesign? Tool => Behind.Tool;
}

public sealed class ProcedurePageReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    /// <summary>Most vessels that are listed.</summary>
    public const int MostVessels = 500;

    public async Task<ProcedureView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var revision = await db
            .ProcedureRevisions.AsNoTracking()
            .SingleOrDefaultAsync(p => p.Id == id, cancellation);
        return revision is null
            ? null
            : new ProcedureView(
                revision,
                await db.FindObjectsAsync(revision.Content, cancellation),
                await db
                    .ProcedureRevisions.AsNoTracking()
                    .Where(p => p.Number == revision.Number)
                    .OrderByDescending(p => p.RevisionIndex)
                    .ToListAsync(cancellation),
                await db
                    .Signatures.AsNoTracking()
                    .Where(s => s.SignedId == id)
                    .OrderBy(s => s.At)
                    .ToListAsync(cancellation),
                await db
                    .Qualifications.AsNoTracking()
                    .Where(q => q.ProcedureNumber == revision.Number)
                    .OrderBy(q => q.Number)
                    .ToListAsync(cancellation),
                await VesselsAsync(db, revision, cancellation),
                await db.FindMeasuredPinAsync(revision.Content.ToolDesignId, cancellation),
                await db.FindDrawnJointsAsync(revision.Number, cancellation)
            );
    }

    /// <summary>Vessels welded by a revision that is no longer in use.</summary>
    private static async Task<IReadOnlyList<Vessel>> VesselsAsync(
        WeldTraceDbContext db,
        ProcedureRevision revision,
        CancellationToken cancellation
    ) =>
        revision.State is ProcedureState.Superseded or ProcedureState.Withdrawn
            ? await db
                .Vessels.AsNoTracking()
                .Where(v =>
                    db.WeldRuns.Any(r => r.ProcedureRevisionId == revision.Id && r.VesselId == v.Id)
                )
                .OrderBy(v => v.Serial)
                .Take(MostVessels)
                .ToListAsync(cancellation)
            : [];
}
