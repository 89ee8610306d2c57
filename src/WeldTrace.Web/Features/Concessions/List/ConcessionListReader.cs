using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Concessions;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Concessions.List;

/// <summary>The concessions of the site, a page at a time; the newest first.</summary>
public sealed class ConcessionListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public const string VesselFilter = "vessel";
    public const string RuleFilter = "rule";
    public const string StateFilter = "state";

    public static IReadOnlyList<string> SortKeys { get; } = ["vessel", "rule", "state"];

    public async Task<(IReadOnlyList<Concession> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var fitting = Filter(db.Concessions.AsNoTracking(), query);
        var sorted = Sort(fitting, query);
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await fitting.CountAsync(cancellation)
        );
    }

    private static IQueryable<Concession> Filter(
        IQueryable<Concession> concessions,
        TableQuery query
    )
    {
        if (query.Filter(VesselFilter).Trim() is { Length: > 0 } vessel)
        {
            concessions = concessions.Where(c =>
                EF.Functions.ILike(c.VesselSerial, LikeText.Containing(vessel), LikeText.EscapeMark)
            );
        }

        if (query.Filter(RuleFilter).Trim() is { Length: > 0 } rule)
        {
            concessions = concessions.Where(c =>
                EF.Functions.ILike(c.RuleId, LikeText.Escape(rule), LikeText.EscapeMark)
            );
        }

        return
            Enum.TryParse<ConcessionState>(query.Filter(StateFilter), out var state)
            && Enum.IsDefined(state)
            ? concessions.Where(c => c.State == state)
            : concessions;
    }

    // The identity grows with time.
    private static IOrderedQueryable<Concession> Sort(
        IQueryable<Concession> concessions,
        TableQuery query
    ) =>
        (query.Sort, query.Descending) switch
        {
            ("vessel", false) => concessions
                .OrderBy(c => c.VesselSerial)
                .ThenBy(c => c.StepSequence)
                .ThenByDescending(c => c.Id),
            ("vessel", true) => concessions
                .OrderByDescending(c => c.VesselSerial)
                .ThenByDescending(c => c.StepSequence)
                .ThenByDescending(c => c.Id),
            ("rule", false) => concessions.OrderBy(c => c.RuleId).ThenByDescending(c => c.Id),
            ("rule", true) => concessions
                .OrderByDescending(c => c.RuleId)
                .ThenByDescending(c => c.Id),
            ("state", false) => concessions.OrderBy(c => c.State).ThenByDescending(c => c.Id),
            ("state", true) => concessions
                .OrderByDescending(c => c.State)
                .ThenByDescending(c => c.Id),
            _ => concessions.OrderByDescending(c => c.Id),
        };
}
