using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Procedures.Compare;

/// <summary>Two revisions side by side, the earlier one on the left.</summary>
public sealed record ComparedRevisions(
    ProcedureRevision Left,
    ProcedureRevision Right,
    IReadOnlyList<ComparedLine> Lines
);

public sealed class CompareProceduresReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<ComparedRevisions?> FindAsync(
        Guid one,
        Guid other,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var pair = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p => p.Id == one || p.Id == other)
            .OrderBy(p => p.Number)
            .ThenBy(p => p.RevisionIndex)
            .ToListAsync(cancellation);
        return pair.Count == 2
            ? new ComparedRevisions(
                pair[0],
                pair[1],
                ProcedureComparison.Of(pair[0].Content, pair[1].Content)
            )
            : null;
    }
}
