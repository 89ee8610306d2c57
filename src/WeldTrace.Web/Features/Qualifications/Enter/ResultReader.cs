using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Qualifications.Enter;

/// <summary>A result with the signatures under it.</summary>
public sealed record ResultView(SpecimenTest Test, IReadOnlyList<Signature> Signatures);

public sealed class ResultReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<ResultView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var test = await db
            .SpecimenTests.AsNoTracking()
            .SingleOrDefaultAsync(t => t.Id == id, cancellation);
        return test is null
            ? null
            : new ResultView(
                test,
                await db
                    .Signatures.AsNoTracking()
                    .Where(s => s.SignedId == id)
                    .OrderBy(s => s.At)
                    .ToListAsync(cancellation)
            );
    }
}
