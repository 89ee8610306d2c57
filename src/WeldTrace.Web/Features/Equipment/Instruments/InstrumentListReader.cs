using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Equipment.Instruments;

public sealed class InstrumentListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string MarkFilter = "mark";
    public const string KindFilter = "measures";

    public static readonly IReadOnlyList<string> SortKeys = ["mark", "measures"];

    public async Task<(IReadOnlyList<Instrument> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var fitting = Filter(db.Instruments.AsNoTracking(), query);
        var sorted = (query.Sort, query.Descending) switch
        {
            ("measures", false) => fitting.OrderBy(i => i.Measures).ThenBy(i => i.Mark),
            ("measures", true) => fitting.OrderByDescending(i => i.Measures).ThenBy(i => i.Mark),
            (_, true) => fitting.OrderByDescending(i => i.Mark),
            _ => fitting.OrderBy(i => i.Mark),
        };
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    private static IQueryable<Instrument> Filter(
        IQueryable<Instrument> instruments,
        TableQuery query
    )
    {
        var mark = query.Filter(MarkFilter).Trim();
        if (mark.Length > 0)
        {
            instruments = instruments.Where(i =>
                EF.Functions.ILike(i.Mark, LikeText.Containing(mark), LikeText.EscapeMark)
            );
        }

        return Enum.TryParse<InstrumentKind>(query.Filter(KindFilter), out var kind)
            ? instruments.Where(i => i.Measures == kind)
            : instruments;
    }
}
