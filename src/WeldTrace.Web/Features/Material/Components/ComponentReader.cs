using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Material.Components;

/// <summary>A component with its lot and its heat treatments.</summary>
public sealed record ComponentView(
    CutComponent Component,
    MaterialLot Lot,
    IReadOnlyList<HeatTreatment> HeatTreatments
);

public sealed class ComponentReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string SerialFilter = "serial";
    public const string KindFilter = "kind";
    public const string UseFilter = "use";
    public const string Free = "free";
    public const string Built = "built";

    public static readonly IReadOnlyList<string> SortKeys = ["serial", "kind", "lot", "made"];

    public async Task<(IReadOnlyList<CutComponent> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var fitting = Filter(db.Components.AsNoTracking(), query);
        var sorted = Sort(fitting, query);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    public async Task<ComponentView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var component = await db
            .Components.AsNoTracking()
            .SingleOrDefaultAsync(c => c.Id == id, cancellation);
        return component is null
            ? null
            : new ComponentView(
                component,
                await db
                    .MaterialLots.AsNoTracking()
                    .SingleAsync(l => l.Id == component.LotId, cancellation),
                await db.FindHeatTreatmentsAsync([id], cancellation)
            );
    }

    public async Task<IReadOnlyList<MaterialLot>> LotsAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .MaterialLots.AsNoTracking()
            .OrderByDescending(l => l.Number)
            .ToListAsync(cancellation);
    }

    private static IQueryable<CutComponent> Filter(
        IQueryable<CutComponent> components,
        TableQuery query
    )
    {
        var (serial, kind) = (
            LikeText.Containing(query.Filter(SerialFilter).Trim()),
            LikeText.Containing(query.Filter(KindFilter).Trim())
        );
        var fitting = components.Where(c =>
            EF.Functions.ILike(c.Serial, serial, LikeText.EscapeMark)
            && EF.Functions.ILike(c.PartKind, kind, LikeText.EscapeMark)
        );
        return query.Filter(UseFilter) switch
        {
            Free => fitting.Where(c => c.VesselId == null && c.ScrappedBecause == null),
            Built => fitting.Where(c => c.VesselId != null),
            _ => fitting,
        };
    }

    private static IQueryable<CutComponent> Sort(
        IQueryable<CutComponent> components,
        TableQuery query
    ) =>
        (query.Sort, query.Descending) switch
        {
            ("kind", false) => components.OrderBy(c => c.PartKind).ThenBy(c => c.Serial),
            ("kind", true) => components.OrderByDescending(c => c.PartKind).ThenBy(c => c.Serial),
            ("lot", false) => components.OrderBy(c => c.LotNumber).ThenBy(c => c.Serial),
            ("lot", true) => components.OrderByDescending(c => c.LotNumber).ThenBy(c => c.Serial),
            ("made", false) => components.OrderBy(c => c.MadeOn).ThenBy(c => c.Serial),
            ("made", true) => components.OrderByDescending(c => c.MadeOn).ThenBy(c => c.Serial),
            (_, true) => components.OrderByDescending(c => c.Serial),
            _ => components.OrderBy(c => c.Serial),
        };
}
