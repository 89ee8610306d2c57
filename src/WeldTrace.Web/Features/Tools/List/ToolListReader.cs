using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Tools.List;

public sealed class ToolListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public static readonly IReadOnlyList<string> SortKeys = ["mark", "design", "state"];

    public async Task<(IReadOnlyList<Tool> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var tools = Filter(db.Tools.AsNoTracking(), query);
        var total = await tools.CountAsync(cancellation);
        var sorted = Sort(tools, query);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            total
        );
    }

    private static IQueryable<Tool> Filter(IQueryable<Tool> tools, TableQuery query)
    {
        var mark = query.Filter("mark").Trim();
        if (mark.Length > 0)
        {
            tools = tools.Where(t =>
                EF.Functions.ILike(t.Mark, LikeText.Containing(mark), LikeText.EscapeMark)
            );
        }

        return Enum.TryParse<ToolState>(query.Filter("state"), out var state)
            ? tools.Where(t => t.State == state)
            : tools;
    }

    private static IQueryable<Tool> Sort(IQueryable<Tool> tools, TableQuery query) =>
        (query.Sort, query.Descending) switch
        {
            ("design", false) => tools.OrderBy(t => t.DesignLabel).ThenBy(t => t.Mark),
            ("design", true) => tools.OrderByDescending(t => t.DesignLabel).ThenBy(t => t.Mark),
            ("state", false) => tools.OrderBy(t => t.State).ThenBy(t => t.Mark),
            ("state", true) => tools.OrderByDescending(t => t.State).ThenBy(t => t.Mark),
            (_, true) => tools.OrderByDescending(t => t.Mark),
            _ => tools.OrderBy(t => t.Mark),
        };
}
