using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding.InterruptRun;

namespace WeldTrace.Web.Tests.Features.Welding.InterruptRun;

public sealed class InterruptRunHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task HandleAsync_Running_ChargesWhatItTravelledAndHoldsTheVessel()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.StartedAsync();

        var outcome = await InterruptAsync(shop, id, "120,5", "spindle stopped");

        Assert.Empty(outcome.Refusals);
        var use = Assert.Single((await shop.ToolNowAsync()).Uses);
        Assert.Equal(ChargeBasis.Stated, use.Basis);
        Assert.Equal(120.5, use.Length.Millimetres, 6);
        var vessel = await shop.VesselNowAsync();
        Assert.Equal(
            (VesselState.OnHold, StepState.Failed),
            (vessel.State, vessel.Step(10)!.State)
        );
        var finding = Assert.Single(await shop.Database.ReadAsync(db => db.Findings.ToListAsync()));
        Assert.Equal((FindingOrigin.InterruptedRun, 1), (finding.Origin, finding.Number));
        Assert.Equal(120.5 / 62 * 180 / Math.PI, finding.Place!.Start!.Value.Degrees, 6);
        var next = await shop.StartAsync(shop.StartForm());
        Assert.Contains(next.Refusals, r => r.Code == "F1");
    }

    [Fact]
    public async Task HandleAsync_InchSite_ReadsInches()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.StartedAsync();

        var outcome = await InterruptAsync(shop, id, "2", "pin broke", UnitSystem.InchPound);

        Assert.True(outcome.IsAccepted);
        Assert.Equal(50.8, (await shop.RunAsync(id)).Travelled!.Value.Millimetres, 6);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("a lot")]
    [InlineData("-1")]
    [InlineData("406")]
    [InlineData("NaN")]
    [InlineData("1e3")]
    public async Task HandleAsync_WrongLength_NamesTheFieldAndRecordsNothing(string? travelled)
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.StartedAsync();

        var outcome = await InterruptAsync(shop, id, travelled, "spindle stopped");

        Assert.Equal(nameof(InterruptRunForm.Travelled), Assert.Single(outcome.Refusals).Field);
        Assert.Equal(WeldRunState.Running, (await shop.RunAsync(id)).State);
    }

    [Fact]
    public async Task HandleAsync_NoReason_NamesTheField()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var id = await shop.StartedAsync();

        var outcome = await InterruptAsync(shop, id, "10", " ");

        Assert.Equal(nameof(InterruptRunForm.EndNote), Assert.Single(outcome.Refusals).Field);
    }

    private static Task<Outcome> InterruptAsync(
        WeldShop shop,
        Guid id,
        string? travelled,
        string reason,
        UnitSystem units = UnitSystem.Metric
    ) =>
        new InterruptRunHandler(shop.Database, shop.Clock).HandleAsync(
            id,
            new InterruptRunForm { Travelled = travelled, EndNote = reason },
            units,
            SamplePeople.Operator,
            CancellationToken.None
        );
}
