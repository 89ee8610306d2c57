using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding.EndRun;

namespace WeldTrace.Web.Tests.Features.Welding.EndRun;

public sealed class EndRunHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task HandleAsync_Running_ChargesThePlannedPath()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.StartedAsync();

        var outcome = await EndAsync(shop, id, SamplePeople.Operator, "  flash a little heavy ");

        Assert.Empty(outcome.Refusals);
        var run = await shop.RunAsync(id);
        Assert.Equal((WeldRunState.Ended, "flash a little heavy"), (run.State, run.EndNote));
        var use = Assert.Single((await shop.ToolNowAsync()).Uses);
        Assert.Equal(ChargeBasis.PlannedPath, use.Basis);
        Assert.Equal(run.PlannedPath.Metres, use.Length.Metres, 9);
    }

    [Fact]
    public async Task HandleAsync_OtherOperator_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.StartedAsync();

        var outcome = await EndAsync(shop, id, SamplePeople.SecondOperator, null);

        Assert.Equal("operator", Assert.Single(outcome.Refusals).Code);
        Assert.Empty((await shop.ToolNowAsync()).Uses);
    }

    [Fact]
    public async Task HandleAsync_EndedAlready_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.EndedAsync();

        var outcome = await EndAsync(shop, id, SamplePeople.Operator, null);

        Assert.Equal("state", Assert.Single(outcome.Refusals).Code);
    }

    [Fact]
    public async Task HandleAsync_RemarkTooLong_NamesTheField()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.StartedAsync();

        var outcome = await EndAsync(shop, id, SamplePeople.Operator, new string('x', 1001));

        Assert.Equal(nameof(EndRunForm.EndNote), Assert.Single(outcome.Refusals).Field);
    }

    [Fact]
    public async Task HandleAsync_NoSuchRun_Refused()
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var outcome = await EndAsync(shop, shop.Vessel.Id, SamplePeople.Operator, null);

        Assert.Equal("run", Assert.Single(outcome.Refusals).Code);
    }

    private static Task<Outcome> EndAsync(WeldShop shop, Guid id, Actor actor, string? remark) =>
        new EndRunHandler(shop.Database, shop.Clock).HandleAsync(
            id,
            new EndRunForm { EndNote = remark },
            actor,
            CancellationToken.None
        );
}
