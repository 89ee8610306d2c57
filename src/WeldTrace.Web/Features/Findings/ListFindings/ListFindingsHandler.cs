using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Findings.ListFindings;

public sealed class ListFindingsHandler(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string SerialFilter = "serial";
    public const string StateFilter = "state";
    public const string OriginFilter = "origin";

    public static IReadOnlyList<string> SortKeys { get; } =
    ["number", "serial", "step", "origin", "state"];

    /// <summary>One page of the list and the count of all rows.</summary>
    public async Task<(IReadOnlyList<Finding> Rows, int Total)> ReadAsync(
        TableQuery query,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var findings = Filtered(db, query);
        return (
            await Sorted(findings, query)
                .Skip(query.Skip)
                .Take(query.PageSize)
                .ToListAsync(cancellation),
            await findings.CountAsync(cancellation)
        );
    }

    /// <summary>The whole list.</summary>
    public async Task<IReadOnlyList<Finding>> ReadAllAsync(
        TableQuery query,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await Sorted(Filtered(db, query), query).ToListAsync(cancellation);
    }

    private static IQueryable<Finding> Filtered(WeldTraceDbContext db, TableQuery query)
    {
        var findings = db.Findings.AsNoTracking();
        var serial = query.Filter(SerialFilter).Trim();
        if (serial.Length > 0)
        {
            var pattern = "%" + LikeText.Escape(serial) + "%";
            findings = findings.Where(f =>
                EF.Functions.ILike(f.VesselSerial, pattern, LikeText.EscapeMark)
            );
        }

        if (
            Enum.TryParse<FindingState>(query.Filter(StateFilter), out var state)
            && Enum.IsDefined(state)
        )
        {
            findings = findings.Where(f => f.State == state);
        }

        if (
            Enum.TryParse<FindingOrigin>(query.Filter(OriginFilter), out var origin)
            && Enum.IsDefined(origin)
        )
        {
            findings = findings.Where(f => f.Origin == origin);
        }

        return findings;
    }

    private static IQueryable<Finding> Sorted(IQueryable<Finding> findings, TableQuery query) =>
        query.Sort switch
        {
            "number" => By(findings, f => f.Number, query.Descending),
            "serial" => By(findings, f => f.VesselSerial, query.Descending),
            "step" => By(findings, f => f.StepSequence, query.Descending),
            "origin" => By(findings, f => f.Origin, query.Descending),
            "state" => By(findings, f => f.State, query.Descending),
            _ => findings.OrderByDescending(f => f.Number),
        };

    private static IQueryable<Finding> By<TKey>(
        IQueryable<Finding> findings,
        Expression<Func<Finding, TKey>> key,
        bool descending
    ) =>
        (descending ? findings.OrderByDescending(key) : findings.OrderBy(key)).ThenByDescending(f =>
            f.Number
        );
}
