using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Designs.List;

/// <summary>The revisions of the vessel designs, a page at a time; of each design the latest first.</summary>
public sealed class DesignListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string NumberFilter = "number";
    public const string StateFilter = "state";

    public static IReadOnlyList<string> SortKeys { get; } = ["number", "title", "state", "author"];

    public async Task<(IReadOnlyList<VesselDesign> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var fitting = Filter(db.VesselDesigns.AsNoTracking(), query);
        var sorted = Sort(fitting, query)
            .ThenBy(d => d.Number)
            .ThenByDescending(d => d.RevisionIndex);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    private static IQueryable<VesselDesign> Filter(
        IQueryable<VesselDesign> designs,
        TableQuery query
    )
    {
        if (query.Filter(NumberFilter).Trim() is { Length: > 0 } part)
        {
            var pattern = LikeText.Containing(part);
            designs = designs.Where(d =>
                EF.Functions.ILike(d.Number, pattern, LikeText.EscapeMark)
                || EF.Functions.ILike(d.Title, pattern, LikeText.EscapeMark)
            );
        }

        return
            Enum.TryParse<DesignState>(query.Filter(StateFilter), out var state)
            && Enum.IsDefined(state)
            ? designs.Where(d => d.State == state)
            : designs;
    }

    private static IOrderedQueryable<VesselDesign> Sort(
        IQueryable<VesselDesign> designs,
        TableQuery query
    ) =>
        (query.Sort, query.Descending) switch
        {
            ("title", false) => designs.OrderBy(d => d.Title),
            ("title", true) => designs.OrderByDescending(d => d.Title),
            ("state", false) => designs.OrderBy(d => d.State),
            ("state", true) => designs.OrderByDescending(d => d.State),
            ("author", false) => designs.OrderBy(d => d.AuthorName),
            ("author", true) => designs.OrderByDescending(d => d.AuthorName),
            (_, true) => designs.OrderByDescending(d => d.Number),
            _ => designs.OrderBy(d => d.Number),
        };
}
