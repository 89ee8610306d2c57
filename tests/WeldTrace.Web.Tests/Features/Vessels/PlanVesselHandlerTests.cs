using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Vessels;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Vessels.Plan;

namespace WeldTrace.Web.Tests.Features.Vessels;

public sealed class PlanVesselHandlerTests(PostgresServerFixture server)
{
    [Fact]
    public async Task HandleAsync_FreeComponents_AreBuiltIntoTheVessel()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (design, lot) = (SampleDesigns.Released(), SampleMaterial.Lot());
        var component = SampleMaterial.Component(lot);
        await site.Database.AddAsync(design, lot, component);

        var outcome = await PlanAsync(
            site,
            design.Id,
            "http://127.0.0.1/equipment/components/" + component.Id.ToString("D")
        );

        Assert.Empty(outcome.Refusals);
        var vessel = await site.Database.ReadAsync(db => db.Vessels.SingleAsync());
        Assert.Equal(
            new Component("shell", "S-0001", lot.Id, lot.Number, lot.CastNumber, component.Id),
            Assert.Single(vessel.Components)
        );
        Assert.Equal(
            vessel.Serial,
            (await site.ReadAsync<CutComponent>(component.Id)).VesselSerial
        );
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task HandleAsync_UsedUnknownOrTwice_NamesEachRow()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (design, lot) = (SampleDesigns.Released(), SampleMaterial.Lot());
        await site.Database.AddAsync(
            design,
            lot,
            SampleMaterial.Component(lot),
            SampleMaterial.Component(lot, "S-0002")
        );
        Accept.All(await PlanAsync(site, design.Id, "S-0001"));

        var outcome = await PlanAsync(site, design.Id, "S-0001", "S-99", "S-0002", "S-0002");

        Assert.Equal(
            "component:Components[0].Serial component:Components[1].Serial component:Components[3].Serial",
            WorkingSite.Text(outcome.Refusals)
        );
        Assert.Equal(1, await site.Database.ReadAsync(db => db.Vessels.CountAsync()));
    }

    [Fact]
    public async Task HandleAsync_SiteAsksFor31_Refuses22()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var design = SampleDesigns.Released();
        var lot = SampleMaterial.Bare();
        Accept.All(
            lot.FileDocument(
                InspectionDocumentType.Type22,
                "EN 755-2",
                new string('e', 64),
                SamplePeople.Inspector,
                SampleTime.Start
            )
        );
        await site.Database.AddAsync(design, lot, SampleMaterial.Component(lot));
        var id = await site.Database.ReadAsync(db => db.Sites.Select(s => s.Id).SingleAsync());
        await site.ChangeAsync<Site>(
            id,
            s =>
            {
                s.RequireDocument(
                    InspectionDocumentType.Type31,
                    SamplePeople.Engineer,
                    SampleTime.Start
                );
                return Outcome.Accepted;
            }
        );

        var outcome = await PlanAsync(site, design.Id, "S-0001");

        Assert.Equal("F7:Components[0].Serial", WorkingSite.Text(outcome.Refusals));
        Assert.Contains(
            "2.2, 3.1 is asked for",
            outcome.Refusals[0].Sentence,
            StringComparison.Ordinal
        );
    }

    private static Task<Outcome> PlanAsync(
        WorkingSite site,
        Guid design,
        params IReadOnlyList<string> serials
    ) =>
        new PlanVesselHandler(site.Database, site.Clock).HandleAsync(
            new()
            {
                Serial = "NR4-0001",
                DesignId = design,
                ProductionLot = "L26-03",
                Components = [.. serials.Select(s => new PlanComponentForm { Serial = s })],
            },
            SamplePeople.Engineer,
            CancellationToken.None
        );
}
