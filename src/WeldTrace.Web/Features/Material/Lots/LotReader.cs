using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Material.Lots;

/// <summary>A lot with what was made from it.</summary>
public sealed record LotView(
    MaterialLot Lot,
    IReadOnlyList<CutComponent> Components,
    IReadOnlyList<Vessel> Vessels
);

/// <summary>Lists material lots and shows where each went.</summary>
public sealed class LotReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string NumberFilter = "number";
    public const string AlloyFilter = "alloy";
    public const string CastFilter = "cast";

    public static readonly IReadOnlyList<string> SortKeys = ["number", "alloy", "cast"];

    public async Task<(IReadOnlyList<MaterialLot> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var (number, alloy, cast) = (
            LikeText.Containing(query.Filter(NumberFilter).Trim()),
            LikeText.Containing(query.Filter(AlloyFilter).Trim()),
            LikeText.Containing(query.Filter(CastFilter).Trim())
        );
        var fitting = db
            .MaterialLots.AsNoTracking()
            .Where(l =>
                EF.Functions.ILike(l.Number, number, LikeText.EscapeMark)
                && EF.Functions.ILike(l.Alloy, alloy, LikeText.EscapeMark)
                && EF.Functions.ILike(l.CastNumber, cast, LikeText.EscapeMark)
            );
        var sorted = (query.Sort, query.Descending) switch
        {
            ("alloy", false) => fitting.OrderBy(l => l.Alloy).ThenBy(l => l.Number),
            ("alloy", true) => fitting.OrderByDescending(l => l.Alloy).ThenBy(l => l.Number),
            ("cast", false) => fitting.OrderBy(l => l.CastNumber).ThenBy(l => l.Number),
            ("cast", true) => fitting.OrderByDescending(l => l.CastNumber).ThenBy(l => l.Number),
            ("number", false) => fitting.OrderBy(l => l.Number),
            _ => fitting.OrderByDescending(l => l.Number),
        };
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    public async Task<LotView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var lot = await db
            .MaterialLots.AsNoTracking()
            .SingleOrDefaultAsync(l => l.Id == id, cancellation);
        if (lot is null)
        {
            return null;
        }

        var part = $$"""[{"materialLotId":"{{id:D}}"}]""";
        return new LotView(
            lot,
            await db
                .Components.AsNoTracking()
                .Where(c => c.LotId == id)
                .OrderBy(c => c.Serial)
                .ToListAsync(cancellation),
            await db
                .Vessels.FromSql($"SELECT * FROM vessels WHERE components @> {part}::jsonb")
                .AsNoTracking()
                .OrderBy(v => v.Serial)
                .ToListAsync(cancellation)
        );
    }

    /// <summary>The current tables of material minima.</summary>
    public async Task<IReadOnlyList<LimitTable>> MinimaAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .LimitTables.AsNoTracking()
            .Where(t => t.Covers == LimitKind.MaterialMinima && t.SupersededById == null)
            .OrderBy(t => t.Code)
            .ToListAsync(cancellation);
    }
}
