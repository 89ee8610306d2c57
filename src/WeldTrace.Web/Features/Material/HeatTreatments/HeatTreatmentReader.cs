using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Material.HeatTreatments;

public sealed class HeatTreatmentReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string NumberFilter = "number";
    public const string FurnaceFilter = "furnace";
    public const string VerdictFilter = "verdict";
    public const string Kept = "kept";
    public const string NotKept = "not-kept";

    public static readonly IReadOnlyList<string> SortKeys = ["number", "on", "furnace"];

    public async Task<(IReadOnlyList<HeatTreatment> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var fitting = Filter(db.HeatTreatments.AsNoTracking(), query);
        var sorted = Sort(fitting, query);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    public async Task<HeatTreatment?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .HeatTreatments.AsNoTracking()
            .SingleOrDefaultAsync(t => t.Id == id, cancellation);
    }

    private static IQueryable<HeatTreatment> Filter(
        IQueryable<HeatTreatment> treatments,
        TableQuery query
    )
    {
        var (number, furnace) = (
            LikeText.Containing(query.Filter(NumberFilter).Trim()),
            LikeText.Containing(query.Filter(FurnaceFilter).Trim())
        );
        var fitting = treatments.Where(t =>
            EF.Functions.ILike(t.Number, number, LikeText.EscapeMark)
            && EF.Functions.ILike(t.Furnace, furnace, LikeText.EscapeMark)
        );
        return query.Filter(VerdictFilter) switch
        {
            Kept => fitting.Where(t => t.IsKept),
            NotKept => fitting.Where(t => !t.IsKept),
            _ => fitting,
        };
    }

    private static IQueryable<HeatTreatment> Sort(
        IQueryable<HeatTreatment> treatments,
        TableQuery query
    ) =>
        (query.Sort, query.Descending) switch
        {
            ("number", false) => treatments.OrderBy(t => t.Number),
            ("number", true) => treatments.OrderByDescending(t => t.Number),
            ("furnace", false) => treatments.OrderBy(t => t.Furnace).ThenBy(t => t.Number),
            ("furnace", true) => treatments.OrderByDescending(t => t.Furnace).ThenBy(t => t.Number),
            ("on", false) => treatments.OrderBy(t => t.On).ThenBy(t => t.Number),
            _ => treatments.OrderByDescending(t => t.On).ThenByDescending(t => t.Number),
        };
}
