using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.ProductionTests.List;

/// <summary>Lists the production tests, and tells where one is due.</summary>
public sealed class ProductionTestListReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public const string MachineFilter = "machine";

    public static readonly IReadOnlyList<string> SortKeys = ["at", "machine", "procedure"];

    /// <summary>One page of the list, or the whole of it, and the count of all rows.</summary>
    public async Task<(IReadOnlyList<ProductionTest> Rows, int Total)> ReadAsync(
        TableQuery query,
        bool whole,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var machine = LikeText.Containing(query.Filter(MachineFilter).Trim());
        var tests = db
            .ProductionTests.AsNoTracking()
            .Where(t => EF.Functions.ILike(t.MachineName, machine, LikeText.EscapeMark));
        var sorted = (query.Sort, query.Descending) switch
        {
            ("machine", false) => tests.OrderBy(t => t.MachineName).ThenByDescending(t => t.At),
            ("machine", true) => tests
                .OrderByDescending(t => t.MachineName)
                .ThenByDescending(t => t.At),
            ("procedure", false) => tests
                .OrderBy(t => t.ProcedureLabel)
                .ThenByDescending(t => t.At),
            ("procedure", true) => tests
                .OrderByDescending(t => t.ProcedureLabel)
                .ThenByDescending(t => t.At),
            ("at", false) => tests.OrderBy(t => t.At),
            _ => tests.OrderByDescending(t => t.At),
        };
        return (
            await (whole ? sorted : sorted.Skip(query.Skip).Take(query.PageSize)).ToListAsync(
                cancellation
            ),
            await tests.CountAsync(cancellation)
        );
    }

    /// <summary>Each machine and procedure for which a design asks for production tests.</summary>
    public async Task<IReadOnlyList<ProductionStanding>> StandingsAsync(
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await ProductionStanding.ReadAsync(db, clock.GetUtcNow(), cancellation);
    }
}
