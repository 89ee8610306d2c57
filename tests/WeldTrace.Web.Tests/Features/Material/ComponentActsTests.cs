using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Components.Tables;
using WeldTrace.Web.Features.Material.Components;
using WeldTrace.Web.Features.Material.HeatTreatments;

namespace WeldTrace.Web.Tests.Features.Material;

public sealed class ComponentActsTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Enter_SeveralSerials_EachIsARecord()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var lot = SampleMaterial.Lot();
        await site.Database.AddAsync(lot);

        var outcome = await EnterAsync(site, "S-1\nS-2\r\n\nS-3", lot.Id);

        Assert.Empty(outcome.Refusals);
        var components = await site.Database.ReadAsync(db =>
            db.Components.OrderBy(c => c.Serial).ToListAsync()
        );
        Assert.Equal(["S-1", "S-2", "S-3"], components.Select(c => c.Serial));
        Assert.All(components, c => Assert.Equal(lot.Number, c.LotNumber));
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Enter_TwiceTakenOrWithoutLot_TellsAllAndSavesNone()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var lot = SampleMaterial.Lot();
        await site.Database.AddAsync(lot, SampleMaterial.Component(lot, "S-1"));

        var outcome = await EnterAsync(site, "S-1, S-2, S-2", null);

        Assert.Equal("serials:Serials exists:Serials lot:Lot", WorkingSite.Text(outcome.Refusals));
        Assert.Equal(1, await site.Database.ReadAsync(db => db.Components.CountAsync()));
    }

    [Fact]
    public async Task Scrap_FreeComponent_IsKeptAsScrapped()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var lot = SampleMaterial.Lot();
        var component = SampleMaterial.Component(lot);
        await site.Database.AddAsync(lot, component);

        Accept.All(
            await Handler(site)
                .ScrapAsync(
                    component.Id,
                    new() { Reason = "Dented at the lathe" },
                    SamplePeople.Operator,
                    CancellationToken.None
                )
        );

        Assert.Equal(
            "Dented at the lathe",
            (await site.ReadAsync<CutComponent>(component.Id)).ScrappedBecause
        );
    }

    [Fact]
    public async Task Heat_LoadOfComponents_IsFoundFromEach()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var lot = SampleMaterial.Lot();
        var (first, second) = (
            SampleMaterial.Component(lot, "S-1"),
            SampleMaterial.Component(lot, "S-2")
        );
        await site.Database.AddAsync(
            lot,
            first,
            second,
            SampleInstruments.Calibrated("TC-3", InstrumentKind.Temperature, "°C")
        );

        var entered = await FurnaceLoad.EnterAsync(site, FurnaceLoad.Form("S-1\nS-2"));

        Assert.Empty(entered.Refusals);
        Assert.True(entered.Value!.IsKept);
        var view = await new ComponentReader(site.Database).FindAsync(
            second.Id,
            CancellationToken.None
        );
        Assert.Equal("F-12", Assert.Single(view!.HeatTreatments).Number);
        Assert.Empty(await site.LedgerProblemsAsync());
    }

    [Fact]
    public async Task Heat_UnknownPartAndNoNumbers_TellsAll()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var form = FurnaceLoad.Form("S-99");
        form.Lower = "warm";
        form.File = null;

        var entered = await FurnaceLoad.EnterAsync(site, form);

        Assert.Equal("number:Lower part:Parts", WorkingSite.Text(entered.Refusals));
        Assert.Equal(0, await site.Database.ReadAsync(db => db.HeatTreatments.CountAsync()));
    }

    [Fact]
    public async Task Heat_Changed_IsRefusedByTheDatabase()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var treatment = SampleHeat.Entered(
            "180",
            [new TreatedPart(Guid.CreateVersion7(SampleTime.Start), "S-1", false)]
        );
        await site.Database.AddAsync(treatment);

        await using var db = site.Database.CreateDbContext();
        await Assert.ThrowsAsync<Npgsql.PostgresException>(() =>
            db.Database.ExecuteSqlAsync(
                $"UPDATE heat_treatments SET is_kept = false",
                TestContext.Current.CancellationToken
            )
        );
    }

    [Theory]
    [InlineData("", 2, "F-2")]
    [InlineData("?sort=number", 2, "F-1")]
    [InlineData("?verdict=kept", 1, "F-1")]
    [InlineData("?verdict=not-kept", 1, "F-2")]
    [InlineData("?number=f-1", 1, "F-1")]
    [InlineData("?furnace=9", 0, null)]
    public async Task Heat_List_ShowsWhatIsAskedFor(string query, int total, string? first)
    {
        await using var site = await WorkingSite.OpenAsync(server);
        TreatedPart[] parts = [new(Guid.CreateVersion7(), "S-1", false)];
        await site.Database.AddAsync(
            Accept.Value(SampleHeat.Enter("F-1", SampleHeat.Kept("171", "178", "180"), parts)),
            Accept.Value(SampleHeat.Enter("F-2", SampleHeat.Kept("171", "192", "180"), parts))
        );

        var (rows, found) = await new HeatTreatmentReader(site.Database).ReadAsync(
            TableQuery.Read(
                new Uri("http://localhost/equipment/heat-treatments" + query),
                HeatTreatmentReader.SortKeys
            ),
            whole: false,
            CancellationToken.None
        );

        Assert.Equal((total, first), (found, rows is [var top, ..] ? top.Number : null));
    }

    private static EnterComponentsHandler Handler(WorkingSite site) =>
        new(site.Database, site.Desk, site.Day, site.Clock);

    private static Task<Outcome> EnterAsync(WorkingSite site, string serials, Guid? lot) =>
        Handler(site)
            .HandleAsync(
                new()
                {
                    Serials = serials,
                    PartKind = "shell",
                    Lot = lot,
                    MadeBy = "own turning shop",
                    MadeOn = SampleTime.Day,
                },
                SamplePeople.Operator,
                CancellationToken.None
            );
}
