using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Lots.Make;

namespace WeldTrace.Web.Tests.Features.Lots;

public sealed class LotActsTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Make_WithoutSerials_GathersWhatFits()
    {
        await using var shop = await LotSite.OpenAsync(server);
        await shop.Site.ChangeAsync<Vessel>(
            shop.Vessels[3].Id,
            v => v.BeginStep(10, SamplePeople.Operator, SampleTime.Start)
        );

        var lot = Accept.Value(await shop.MakeAsync(shop.Form()));

        Assert.Equal(3, lot.Vessels.Count);
        var first = await shop.Site.ReadAsync<Vessel>(shop.Vessels[0].Id);
        Assert.Equal((lot.Id, "L-1"), (first.LotId!.Value, first.ProductionLot));
        Assert.Empty(await shop.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Make_WithFaults_TellsThem_AndSavesNothing()
    {
        await using var shop = await LotSite.OpenAsync(server);
        var empty = await shop.MakeAsync(new MakeLotForm());
        var form = shop.Form();
        form.Vessels = "NR4-0001 NR4-0099";
        var unknown = await shop.MakeAsync(form);
        var other = await shop.MakeAsync(shop.Form(), shop.Inspector);

        Assert.Equal(
            "day:From day:Until design:DesignId procedure:ProcedureId",
            WorkingSite.Text(empty.Refusals)
        );
        Assert.Equal("serial:Vessels", WorkingSite.Text(unknown.Refusals));
        Assert.Equal("role:", WorkingSite.Text(other.Refusals));
        Assert.Equal(0, await shop.Site.Database.ReadAsync(db => db.ProductionLots.CountAsync()));
    }

    [Fact]
    public async Task Make_WithATakenNumber_IsRefusedAtItsField()
    {
        await using var shop = await LotSite.OpenAsync(server);
        var (first, second) = (shop.Form(), shop.Form());
        (first.Vessels, second.Vessels) = ("NR4-0001 NR4-0002", "NR4-0003 NR4-0004");
        Accept.Value(await shop.MakeAsync(first));

        var again = await shop.MakeAsync(second);

        Assert.Equal("exists:Number", WorkingSite.Text(again.Refusals));
    }

    [Fact]
    public async Task Choose_IsSigned_AndGivesTheSampleItsRoute()
    {
        await using var shop = await LotSite.OpenAsync(server);
        var lot = Accept.Value(await shop.MakeAsync(shop.Form()));
        var wrong = await shop.ChooseAsync(lot.Id, "seven quiet ankers");
        Assert.Equal("password:Password", WorkingSite.Text(wrong.Refusals));

        Accept.All(await shop.ChooseAsync(lot.Id));

        var sampled = await shop.Site.ReadAsync<ProductionLot>(lot.Id);
        var sample = await shop.Site.ReadAsync<Vessel>(Assert.Single(sampled.Samples).VesselId);
        Assert.Equal(SampleKind.Section, sample.Sample!.Kind);
        Assert.Contains(50, sample.Steps.Select(s => s.Sequence));
        Assert.Empty(await shop.LedgerProblemsAsync());
    }

    /// <summary>F20: the test of the sample, its own finding, the lot and the holds of all others are one save.</summary>
    [Fact]
    public async Task SampleThatFails_HoldsEveryVessel_InTheSameSave()
    {
        await using var shop = await LotSite.OpenAsync(server);
        var lot = await shop.SampledAsync();

        await shop.SignSectionAsync(lot, new SampleTests.Hook(500));

        var failed = await shop.Site.ReadAsync<ProductionLot>(lot.Id);
        Assert.Equal(LotState.Failed, failed.State);
        var states = await shop.Site.Database.ReadAsync(db =>
            db.Vessels.Where(v => v.LotId == lot.Id).Select(v => v.State).ToListAsync()
        );
        Assert.All(states, s => Assert.Equal(VesselState.OnHold, s));
        var findings = await shop.Site.Database.ReadAsync(db =>
            db.Findings.Where(f => f.Origin == FindingOrigin.LotSample).ToListAsync()
        );
        Assert.Equal(states.Count - 1, findings.Count);
        Assert.Equal("F20:", WorkingSite.Text((await shop.AcceptAsync(lot.Id)).Refusals));
        Assert.Empty(await shop.LedgerProblemsAsync());
    }

    [Fact]
    public async Task SampleThatPasses_LetsTheLotBeAccepted_WithItsStatement()
    {
        await using var shop = await LotSite.OpenAsync(server);
        var lot = await shop.SampledAsync();
        Assert.Equal("F20:", WorkingSite.Text((await shop.AcceptAsync(lot.Id)).Refusals));
        await shop.SignSectionAsync(lot, new SampleTests.Hook(50));

        Accept.All(await shop.AcceptAsync(lot.Id));

        var accepted = await shop.Site.ReadAsync<ProductionLot>(lot.Id);
        Assert.Equal(LotState.Accepted, accepted.State);
        Assert.Contains(
            "1 of 1 samples met their limits",
            accepted.Acceptance!.Statement.Sentences[0],
            StringComparison.Ordinal
        );
        Assert.Equal(
            2,
            await shop.Site.Database.ReadAsync(db =>
                db.Signatures.CountAsync(s => s.SignedId == lot.Id)
            )
        );
        Assert.Empty(await shop.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Acts_OnALotThatIsNotThere_AreRefused()
    {
        await using var shop = await LotSite.OpenAsync(server);

        Assert.Equal("missing:", WorkingSite.Text((await shop.ChooseAsync(Guid.Empty)).Refusals));
        Assert.Equal("missing:", WorkingSite.Text((await shop.AcceptAsync(Guid.Empty)).Refusals));
        Assert.Null(await shop.Lots.FindAsync(Guid.Empty, CancellationToken.None));
    }
}
