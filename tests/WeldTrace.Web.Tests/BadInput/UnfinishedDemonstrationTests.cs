using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Domain.Sites;
using WeldTrace.Persistence;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Persistence.Roles;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.BadInput;

/// <summary>The first start of the demonstration was stopped half-way: the next one says so and doesn't show a workshop without vessels.</summary>
public sealed class UnfinishedDemonstrationTests(PostgresServerFixture server)
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Start_OnASiteWithoutVessels_IsRefusedForADemonstrationOnly(
        bool isDemonstration
    )
    {
        await using var database = await SiteDatabase.CreateAsync(server);
        await database.AddAsync(
            Accept.Value(
                Site.SetUp(
                    "Works",
                    "Europe/Oslo",
                    UnitSystem.Metric,
                    isDemonstration,
                    SamplePeople.QualityManager,
                    SampleTime.Start
                )
            )
        );
        var services = new ServiceCollection()
            .AddSingleton<IDbContextFactory<WeldTraceDbContext>>(database)
            .AddSingleton<IConfiguration>(new ConfigurationBuilder().Build())
            .AddSingleton<DatabaseSettings>()
            .BuildServiceProvider();
        var start = new DemoData(services, TimeProvider.System).StartAsync(
            TestContext.Current.CancellationToken
        );

        if (!isDemonstration)
        {
            await start;
            return;
        }

        var refusal = await Assert.ThrowsAsync<DatabaseStartException>(() => start);
        Assert.Equal(DatabaseStartProblem.DemonstrationUnfinished, refusal.Problem);
        Assert.Contains("Delete that folder", refusal.Message, StringComparison.Ordinal);
    }
}
