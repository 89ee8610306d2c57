using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Qualifications;

/// <summary>A qualification with the signatures under its record, pieces and results.</summary>
public sealed record QualificationView(
    QualificationRecords Records,
    QualificationStanding Standing,
    IReadOnlyList<Signature> Signatures,
    IReadOnlyList<NamedWorking> Workings
);

public sealed class QualificationReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<QualificationView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindQualificationAsync(id, cancellation) is not { } records)
        {
            return null;
        }

        Guid[] ids = [id, .. records.Pieces.Select(p => p.Id), .. records.Tests.Select(t => t.Id)];
        return new QualificationView(
            records,
            records.Standing,
            await db
                .Signatures.AsNoTracking()
                .Where(s => ids.Contains(s.SignedId))
                .OrderBy(s => s.At)
                .ToListAsync(cancellation),
            QualificationWorkings.Of(
                records,
                await db.TableOfAsync(records.Record, LimitKind.QualificationRange, cancellation)
            )
        );
    }
}
