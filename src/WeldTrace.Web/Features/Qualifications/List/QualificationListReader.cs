using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Qualification;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Qualifications.List;

public sealed class QualificationListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string ProcedureFilter = "procedure";
    public const string StateFilter = "state";

    public static readonly IReadOnlyList<string> SortKeys = ["number", "procedure", "state"];

    public async Task<(IReadOnlyList<QualificationRecord> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var fitting = Filter(db.Qualifications.AsNoTracking(), query);
        var sorted = Sort(fitting, query);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    private static IQueryable<QualificationRecord> Filter(
        IQueryable<QualificationRecord> records,
        TableQuery query
    )
    {
        var procedure = query.Filter(ProcedureFilter).Trim();
        if (procedure.Length > 0)
        {
            records = records.Where(q =>
                EF.Functions.ILike(
                    q.ProcedureLabel,
                    LikeText.Containing(procedure),
                    LikeText.EscapeMark
                )
            );
        }

        return Enum.TryParse<QualificationState>(query.Filter(StateFilter), out var state)
            ? records.Where(q => q.State == state)
            : records;
    }

    private static IQueryable<QualificationRecord> Sort(
        IQueryable<QualificationRecord> records,
        TableQuery query
    ) =>
        (query.Sort, query.Descending) switch
        {
            ("procedure", false) => records.OrderBy(q => q.ProcedureLabel).ThenBy(q => q.Number),
            ("procedure", true) => records
                .OrderByDescending(q => q.ProcedureLabel)
                .ThenBy(q => q.Number),
            ("state", false) => records.OrderBy(q => q.State).ThenBy(q => q.Number),
            ("state", true) => records.OrderByDescending(q => q.State).ThenBy(q => q.Number),
            (_, true) => records.OrderByDescending(q => q.Number),
            _ => records.OrderBy(q => q.Number),
        };
}
