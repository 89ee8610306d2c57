using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

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
        if (pair.Count != 2)
        {
            return null;
        }

        var (left, right) = (pair[0], pair[1]);
        return new ComparedRevisions(
            left,
            right,
            ProcedureComparison.Of(
                ProcedureLines.Of(
                    left.Content,
                    await db.FindObjectsAsync(left.Content, cancellation)
                ),
                ProcedureLines.Of(
                    right.Content,
                    await db.FindObjectsAsync(right.Content, cancellation)
                )
            )
        );
    }
}
