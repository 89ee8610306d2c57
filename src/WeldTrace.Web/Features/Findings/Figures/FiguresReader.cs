using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Findings.Figures;

/// <summary>The running figures of quality.</summary>
public sealed class FiguresReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    /// <param name="since">First instant; null for everything.</param>
    /// <param name="cancellation">Ends the reading.</param>
    public async Task<FindingFigures> ReadAsync(
        DateTimeOffset? since,
        CancellationToken cancellation
    )
    {
        var from = since ?? DateTimeOffset.UnixEpoch;
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var findings = await db
            .Findings.AsNoTracking()
            .Where(f => f.OpenedAt >= from)
            .ToListAsync(cancellation);
        var lengths = await db
            .WeldRuns.Where(r => r.StartedAt >= from && r.Travelled != null && r.Repair == null)
            .Select(r => r.Travelled)
            .ToListAsync(cancellation);
        return FindingFigures.Of(
            findings,
            Length.FromSi(lengths.OfType<Length>().Sum(l => l.SiValue))
        );
    }
}
