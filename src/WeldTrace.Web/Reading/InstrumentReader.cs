using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Reading;

/// <summary>Which instruments of the register may be used today.</summary>
public sealed class InstrumentReader(IDbContextFactory<WeldTraceDbContext> contexts, SiteDay day)
{
    /// <summary>Instruments of a kind that can supply acceptance values today, by their marks.</summary>
    public async Task<IReadOnlyList<Instrument>> UsableAsync(
        InstrumentKind kind,
        CancellationToken cancellation = default
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var all = await db
            .Instruments.AsNoTracking()
            .Where(i => i.Measures == kind)
            .OrderBy(i => i.Mark)
            .ToListAsync(cancellation);
        var today = await day.TodayAsync(cancellation);
        return [.. all.Where(i => InstrumentRules.Against(i, today) is null)];
    }
}
