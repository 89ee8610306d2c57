using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;

namespace WeldTrace.Web.Tests.Features.Welding;

/// <summary>The gate asks the database a fixed number of times, whatever the vessel's history.</summary>
public sealed class GateQueriesTests(PostgresServerFixture server)
{
    // One for each kind of record that a rule looks at.
    private const int MostQueries = 14;

    [Fact]
    public async Task Gate_AsksTheSameNumberOfTimes_BeforeTheFirstRunAndAfterIt()
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var before = await CountAsync(shop);
        await shop.EndedAsync();
        var after = await CountAsync(shop);

        Assert.Equal(before, after);
        Assert.InRange(before, 1, MostQueries);
    }

    private static async Task<int> CountAsync(WeldShop shop)
    {
        var counter = new Counter();
        await using var db = new WeldTraceDbContext(
            new DbContextOptionsBuilder<WeldTraceDbContext>()
                .UseWeldTrace(shop.Database.ConnectionString)
                .AddInterceptors(counter)
                .Options
        );
        var facts = await db.FindWeldGateFactsAsync(
            shop.Vessel.Serial,
            10,
            new WeldChoice(shop.Tool, shop.Machine, SamplePeople.Operator, shop.Clock.GetUtcNow()),
            CancellationToken.None
        );
        Assert.NotNull(facts);
        return counter.Commands;
    }

    private sealed class Counter : DbCommandInterceptor
    {
        public int Commands { get; private set; }

        public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
            DbCommand command,
            CommandEventData eventData,
            InterceptionResult<DbDataReader> result,
            CancellationToken cancellationToken = default
        )
        {
            Commands++;
            return new(result);
        }
    }
}
