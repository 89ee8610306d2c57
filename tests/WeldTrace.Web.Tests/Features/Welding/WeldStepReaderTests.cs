using WeldTrace.Domain.Records;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Welding;

namespace WeldTrace.Web.Tests.Features.Welding;

public sealed class WeldStepReaderTests(PostgresServerFixture server)
{
    [Fact]
    public async Task FindAsync_NoToolChosen_ToolRuleForbidsAndToolsAreOffered()
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var view = await FindAsync(shop, null, null);

        Assert.False(view!.MayStart);
        var rule = Assert.Single(view.Gate, v => v.Standing == RuleStanding.Forbids);
        Assert.Equal("F6", rule.RuleId);
        Assert.Equal(shop.Tool.Mark, Assert.Single(view.Tools).Mark);
        Assert.Equal(shop.Machine.Id, view.Machine!.Id);
    }

    [Fact]
    public async Task FindAsync_ScannedAddressOfTool_ToolFound()
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var view = await FindAsync(shop, $"https://records.example/tools/{shop.Tool.Id:D}", null);

        Assert.Equal(shop.Tool.Id, view!.Facts.Tool!.Id);
        Assert.True(view.MayStart);
    }

    [Theory]
    [InlineData("' OR 1=1 --")]
    [InlineData("T-15-01\0")]
    public async Task FindAsync_HostileCode_NoTool(string code)
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var view = await FindAsync(shop, code, null);

        Assert.Null(view!.Facts.Tool);
    }

    [Fact]
    public async Task FindAsync_RunUnfinished_IsShown()
    {
        await using var shop = await WeldShop.OpenAsync(server);
        var run = await shop.StartedAsync();

        var view = await FindAsync(shop, null, null);

        Assert.Equal(run, view!.Unsigned!.Id);
    }

    [Fact]
    public async Task FindAsync_NoSuchVessel_Null()
    {
        await using var shop = await WeldShop.OpenAsync(server);

        var view = await new WeldStepReader(shop.Database, shop.Clock).FindAsync(
            new("no such", 10),
            null,
            null,
            SamplePeople.Operator,
            CancellationToken.None
        );

        Assert.Null(view);
    }

    private static Task<WeldStepView?> FindAsync(WeldShop shop, string? tool, string? machine) =>
        new WeldStepReader(shop.Database, shop.Clock).FindAsync(
            new(shop.Vessel.Serial, 10),
            tool,
            machine,
            SamplePeople.Operator,
            CancellationToken.None
        );
}
