using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Laboratory.Show;

/// <summary>A laboratory test with its signatures and what followed from it.</summary>
public sealed record LaboratoryView(
    LaboratoryTest Test,
    IReadOnlyList<Signature> Signatures,
    IReadOnlyList<Finding> Findings
);

public sealed class LaboratoryReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<LaboratoryView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var test = await db
            .LaboratoryTests.AsNoTracking()
            .SingleOrDefaultAsync(t => t.Id == id, cancellation);
        return test is null
            ? null
            : new LaboratoryView(
                test,
                await db
                    .Signatures.AsNoTracking()
                    .Where(s => s.SignedId == id)
                    .OrderBy(s => s.At)
                    .ToListAsync(cancellation),
                await db
                    .Findings.AsNoTracking()
                    .Where(f => f.EvidenceId == id)
                    .OrderBy(f => f.Number)
                    .ToListAsync(cancellation)
            );
    }
}
