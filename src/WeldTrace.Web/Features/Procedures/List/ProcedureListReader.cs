using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Procedures.List;

public sealed class ProcedureListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public static readonly IReadOnlyList<string> SortKeys = ["number", "title", "state"];

    public async Task<(IReadOnlyList<ProcedureRevision> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var procedures = Filter(db.ProcedureRevisions.AsNoTracking(), query);
        var total = await procedures.CountAsync(cancellation);
        var sorted = Sort(procedures, query);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            total
        );
    }

    private static IQueryable<ProcedureRevision> Filter(
        IQueryable<ProcedureRevision> procedures,
        TableQuery query
    )
    {
        var number = query.Filter("number").Trim();
        if (number.Length > 0)
        {
            procedures = procedures.Where(p =>
                EF.Functions.ILike(p.Number, LikeText.Containing(number), LikeText.EscapeMark)
            );
        }

        return Enum.TryParse<ProcedureState>(query.Filter("state"), out var state)
            ? procedures.Where(p => p.State == state)
            : procedures;
    }

    private static IQueryable<ProcedureRevision> Sort(
        IQueryable<ProcedureRevision> procedures,
        TableQuery query
    ) =>
        (query.Sort, query.Descending) switch
        {
            ("title", false) => procedures.OrderBy(p => p.Title).ThenBy(p => p.RevisionIndex),
            ("title", true) => procedures
                .OrderByDescending(p => p.Title)
                .ThenBy(p => p.RevisionIndex),
            ("state", false) => procedures.OrderBy(p => p.State).ThenBy(p => p.Number),
            ("state", true) => procedures.OrderByDescending(p => p.State).ThenBy(p => p.Number),
            (_, true) => procedures
                .OrderByDescending(p => p.Number)
                .ThenByDescending(p => p.RevisionIndex),
            _ => procedures.OrderBy(p => p.Number).ThenByDescending(p => p.RevisionIndex),
        };
}
