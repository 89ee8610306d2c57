using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Labels;
using WeldTrace.Web.Features.OpenCode;

namespace WeldTrace.Web.Tests.Features.Labels;

public sealed class LabelTests(PostgresServerFixture server)
{
    private static readonly Uri Address = new("https://weld.example/");

    [Fact]
    public async Task List_OnlyWhatIsInUse_ByMark()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var design = SampleTools.Design();
        var retired = SampleTools.InService(design, "T-2");
        Accept.All(
            retired.Retire(
                Domain.Tooling.RetirementReason.Wear,
                "Worn.",
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );
        await site.Database.AddAsync(design, SampleTools.InService(design, "T-1"), retired);
        var reader = Reader(site);

        var tools = await reader.ListAsync(LabelKind.Tools, "t-", CancellationToken.None);
        var none = await reader.ListAsync(LabelKind.Tools, "%", CancellationToken.None);

        Assert.Equal("T-1", Assert.Single(tools).Mark);
        Assert.Empty(none);
    }

    /// <summary>Whatever a label's code holds must open the record that the label is for.</summary>
    [Fact]
    public async Task Open_CodeOfEachLabel_IsThePageOfItsRecord()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var (design, lot) = (SampleTools.Design(), SampleMaterial.Lot());
        var tool = SampleTools.InService(design);
        var vesselDesign = SampleDesigns.Released();
        await site.Database.AddAsync(
            design,
            tool,
            lot,
            vesselDesign,
            SampleMaterial.Component(lot),
            SampleInstruments.Caliper(),
            SampleMachines.Entered(),
            SampleVessels.Planned(vesselDesign, lot)
        );
        var open = new OpenCodeReader(site.Database);

        foreach (var kind in Enum.GetValues<LabelKind>())
        {
            var choice = Assert.Single(
                await Reader(site).ListAsync(kind, "", CancellationToken.None)
            );
            var code = new Uri(Address, choice.Path).AbsoluteUri;
            Assert.Equal(choice.Path, await open.FindAsync(code, CancellationToken.None));
            Assert.Equal(choice.Path, await open.FindAsync(choice.Mark, CancellationToken.None));
        }

        Assert.Equal(
            Routes.Vessel("NR4-0001"),
            await open.FindAsync(
                new Uri(Address, Routes.Vessel("NR4-0001")).AbsoluteUri,
                CancellationToken.None
            )
        );
        Assert.Null(await open.FindAsync("nothing", CancellationToken.None));
        Assert.Null(await open.FindAsync("", CancellationToken.None));
    }

    [Fact]
    public async Task Print_ChosenRecords_OrNothing()
    {
        await using var site = await WorkingSite.OpenAsync(server);
        var lot = SampleMaterial.Lot();
        await site.Database.AddAsync(lot);
        var reader = Reader(site);

        var pdf = await reader.PrintAsync(
            LabelKind.Lots,
            [lot.Id],
            Address,
            SamplePeople.Inspector,
            CancellationToken.None
        );
        var none = await reader.PrintAsync(
            LabelKind.Tools,
            [lot.Id],
            Address,
            SamplePeople.Inspector,
            CancellationToken.None
        );

        Assert.Equal("%PDF"u8.ToArray(), pdf!.Take(4));
        Assert.Null(none);
    }

    private static LabelReader Reader(WorkingSite site) => new(site.Database, site.Stamps);
}
