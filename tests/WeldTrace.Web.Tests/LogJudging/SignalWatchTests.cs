using WeldTrace.Domain.Procedures;
using WeldTrace.TestSupport.Database;
using WeldTrace.Web.LogJudging;
using WeldTrace.Web.Tests.Features.Welding;

namespace WeldTrace.Web.Tests.LogJudging;

/// <summary>The signals that nobody has reviewed, and when the charts are made again.</summary>
public sealed class SignalWatchTests(PostgresServerFixture server)
{
    [Fact]
    public async Task FindUnreviewed_TellsOfARunThatStandsOut_UntilItIsReviewed()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var run = await SampleFigures.AmongOthersAsync(shop, meanNewtons: 12_000);
        var watch = new SignalWatch(shop.Database);

        var found = Assert.Single(await watch.FindUnreviewedAsync(CancellationToken.None));
        await SampleFigures.ReviewAsync(shop, run);

        Assert.Equal(
            (run.ProcedureRevisionId, run.ProcedureLabel, WeldParameter.AxialForce, 1),
            (found.RevisionId, found.Label, found.Parameter, found.Runs)
        );
        Assert.Empty(await watch.FindUnreviewedAsync(CancellationToken.None));
    }

    [Fact]
    public async Task FindUnreviewed_ALogJudgedSince_IsSeenOnceItIsTold()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var run = await SampleFigures.AmongOthersAsync(shop, meanNewtons: 8_000);
        var watch = new SignalWatch(shop.Database);
        Assert.Empty(await watch.FindUnreviewedAsync(CancellationToken.None));
        await using var db = shop.Database.CreateDbContext();
        db.Add(SampleFigures.Figure(run, Guid.CreateVersion7(), 1, 12_000));
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);

        Assert.Empty(await watch.FindUnreviewedAsync(CancellationToken.None));
        watch.Judged(run.ProcedureRevisionId);

        Assert.Single(await watch.FindUnreviewedAsync(CancellationToken.None));
    }
}
