using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Procedures.Show;

/// <summary>A procedure revision with everything its page shows.</summary>
public sealed record ProcedureView(
    ProcedureRevision Revision,
    ToolDesign? Tool,
    IReadOnlyList<ProcedureRevision> Revisions,
    IReadOnlyList<Signature> Signatures
);

public sealed class ProcedurePageReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
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
                await db
                    .ToolDesigns.AsNoTracking()
                    .SingleOrDefaultAsync(d => d.Id == revision.Content.ToolDesignId, cancellation),
                await db
                    .ProcedureRevisions.AsNoTracking()
                    .Where(p => p.Number == revision.Number)
                    .OrderByDescending(p => p.RevisionIndex)
                    .ToListAsync(cancellation),
                await db
                    .Signatures.AsNoTracking()
                    .Where(s => s.SignedId == id)
                    .OrderBy(s => s.At)
                    .ToListAsync(cancellation)
            );
    }
}
