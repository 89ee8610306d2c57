using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Lots;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Lots.List;

/// <summary>Lists the production lots.</summary>
public sealed class LotListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string NumberFilter = "number";
    public const string DesignFilter = "design";
    public const string StateFilter = "state";

    public static readonly IReadOnlyList<string> SortKeys = ["number", "design", "state"];

    /// <summary>One page of the list, or the whole of it, and the count of all rows.</summary>
    public async Task<(IReadOnlyList<ProductionLot> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var (number, design) = (
            LikeText.Containing(query.Filter(NumberFilter).Trim()),
            LikeText.Containing(query.Filter(DesignFilter).Trim())
        );
        var lots = db
            .ProductionLots.AsNoTracking()
            .Where(l =>
                EF.Functions.ILike(l.Number, number, LikeText.EscapeMark)
                && EF.Functions.ILike(l.DesignLabel, design, LikeText.EscapeMark)
            );
        if (
            Enum.TryParse<LotState>(query.Filter(StateFilter), out var state)
            && Enum.IsDefined(state)
        )
        {
            lots = lots.Where(l => l.State == state);
        }

        var sorted = (query.Sort, query.Descending) switch
        {
            ("design", false) => lots.OrderBy(l => l.DesignLabel).ThenBy(l => l.Number),
            ("design", true) => lots.OrderByDescending(l => l.DesignLabel).ThenBy(l => l.Number),
            ("state", false) => lots.OrderBy(l => l.State).ThenBy(l => l.Number),
            ("state", true) => lots.OrderByDescending(l => l.State).ThenBy(l => l.Number),
            ("number", false) => lots.OrderBy(l => l.Number),
            _ => lots.OrderByDescending(l => l.Number),
        };
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await lots.CountAsync(cancellation)
        );
    }
}
