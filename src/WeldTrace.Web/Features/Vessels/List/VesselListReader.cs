using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.List;

public sealed class VesselListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public static readonly IReadOnlyList<string> SortKeys = ["serial", "design", "lot", "state"];

    public async Task<(IReadOnlyList<Vessel> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var vessels = Filter(db.Vessels.AsNoTracking(), query);
        var total = await vessels.CountAsync(cancellation);
        var sorted = Sort(vessels, query);
        var rows = await (
            whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)
        ).ToListAsync(cancellation);
        return (rows, total);
    }

    private static IQueryable<Vessel> Filter(IQueryable<Vessel> vessels, TableQuery query)
    {
        var (serial, lot) = (query.Filter("serial").Trim(), query.Filter("lot").Trim());
        if (serial.Length > 0)
        {
            vessels = vessels.Where(v =>
                EF.Functions.ILike(v.Serial, LikeText.Containing(serial), LikeText.EscapeMark)
            );
        }

        if (lot.Length > 0)
        {
            vessels = vessels.Where(v =>
                EF.Functions.ILike(v.ProductionLot, LikeText.Containing(lot), LikeText.EscapeMark)
            );
        }

        return Enum.TryParse<VesselState>(query.Filter("state"), out var state)
            ? vessels.Where(v => v.State == state)
            : vessels;
    }

    private static IQueryable<Vessel> Sort(IQueryable<Vessel> vessels, TableQuery query) =>
        (query.Sort, query.Descending) switch
        {
            ("design", false) => vessels.OrderBy(v => v.DesignLabel).ThenBy(v => v.Serial),
            ("design", true) => vessels.OrderByDescending(v => v.DesignLabel).ThenBy(v => v.Serial),
            ("lot", false) => vessels.OrderBy(v => v.ProductionLot).ThenBy(v => v.Serial),
            ("lot", true) => vessels.OrderByDescending(v => v.ProductionLot).ThenBy(v => v.Serial),
            ("state", false) => vessels.OrderBy(v => v.State).ThenBy(v => v.Serial),
            ("state", true) => vessels.OrderByDescending(v => v.State).ThenBy(v => v.Serial),
            (_, true) => vessels.OrderByDescending(v => v.Serial),
            _ => vessels.OrderBy(v => v.Serial),
        };
}
