using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Tables;

namespace WeldTrace.Web.Features.Trace.Histories;

/// <summary>The vessels whose histories may be ordered together.</summary>
/// <param name="Title">What they have in common.</param>
/// <param name="Rows">The vessels, by serial where nothing else is said.</param>
public sealed record OrderedVessels(string Title, IReadOnlyList<TracedVessel> Rows);

/// <summary>Finds the vessels of a production lot, or those that a search finds.</summary>
public sealed class OrderedVesselsReader(
    TraceReader traces,
    IDbContextFactory<WeldTraceDbContext> contexts
)
{
    /// <summary>Name of the lot in the address.</summary>
    public const string LotField = "production-lot";

    /// <summary>The vessels; null when there is no such lot.</summary>
    public async Task<OrderedVessels?> ReadAsync(Uri address, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(address);
        var query = TableQuery.Read(address, TraceReader.SortKeys);
        if (query.Filter(LotField) is { Length: > 0 } lot)
        {
            return Guid.TryParse(lot, out var id) ? await OfLotAsync(id, cancellation) : null;
        }

        var traced = await traces.ReadAsync(query, whole: true, cancellation);
        var title = traced.Words.Count > 0 ? string.Join(", ", traced.Words) : "Every vessel";
        return new OrderedVessels(title, traced.Rows);
    }

    private async Task<OrderedVessels?> OfLotAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var lot = await db
            .ProductionLots.AsNoTracking()
            .SingleOrDefaultAsync(l => l.Id == id, cancellation);
        if (lot is null)
        {
            return null;
        }

        var ids = lot.Vessels.Select(v => v.Id).ToList();
        var vessels = await db
            .Vessels.Where(v => ids.Contains(v.Id))
            .OrderBy(v => v.Serial)
            .AsTraced()
            .ToListAsync(cancellation);
        return new OrderedVessels($"Production lot {lot.Number}", vessels);
    }
}
