using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Limits.List;

public sealed class LimitListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string CodeFilter = "code";
    public const string KindFilter = "kind";
    public const string StandingFilter = "standing";
    public const string Current = "current";
    public const string Unchecked = "unchecked";

    public static readonly IReadOnlyList<string> SortKeys = ["code", "kind"];

    public async Task<(IReadOnlyList<LimitTable> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var fitting = Filter(db.LimitTables.AsNoTracking(), query);
        var sorted = Sort(fitting, query);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    private static IQueryable<LimitTable> Filter(IQueryable<LimitTable> tables, TableQuery query)
    {
        tables = query.Filter(StandingFilter) switch
        {
            Current => tables.Where(t => t.SupersededById == null),
            Unchecked => tables.Where(t => t.SupersededById == null && t.OwnCheck == null),
            _ => tables,
        };
        if (query.Filter(CodeFilter).Trim() is { Length: > 0 } code)
        {
            tables = tables.Where(t =>
                EF.Functions.ILike(t.Code, LikeText.Containing(code), LikeText.EscapeMark)
            );
        }

        return Enum.TryParse<LimitKind>(query.Filter(KindFilter), out var kind)
            ? tables.Where(t => t.Covers == kind)
            : tables;
    }

    private static IQueryable<LimitTable> Sort(IQueryable<LimitTable> tables, TableQuery query) =>
        (query.Sort, query.Descending) switch
        {
            ("code", true) => tables.OrderByDescending(t => t.Code).ThenBy(t => t.Edition),
            ("kind", false) => tables.OrderBy(t => t.Covers).ThenBy(t => t.Code),
            ("kind", true) => tables.OrderByDescending(t => t.Covers).ThenBy(t => t.Code),
            _ => tables.OrderBy(t => t.Code).ThenByDescending(t => t.Edition),
        };
}
