using Microsoft.Playwright;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests;

public sealed class OperatorJourneyTests(SiteFixture site)
{
    private const int TabletWidth = 820;

    [Fact]
    public async Task Vessel_OnHold_ForbidsTheRunWithAReason()
    {
        await using var operatorVisitor = await Visitor.SignInAsync(
            site,
            DemoPeople.Operator,
            TabletWidth
        );

        await operatorVisitor.GoToAsync("/vessels/NR10-0008/weld/20");

        await operatorVisitor.SeesAsync("Open findings hold the vessel");
        Assert.True(
            await operatorVisitor
                .Page.GetByRole(AriaRole.Button, new() { Name = "Start run" })
                .IsDisabledAsync()
        );
    }

    [Fact]
    public async Task Vessel_OfANonexistentSerial_SaysSo()
    {
        await using var operatorVisitor = await Visitor.SignInAsync(
            site,
            DemoPeople.Operator,
            TabletWidth
        );

        var response = await operatorVisitor.GoToAsync(
            "/vessels/" + Uri.EscapeDataString("<b>NR10-9999")
        );

        Assert.Equal(404, response!.Status);
        await operatorVisitor.SeesAsync("Nothing at this address");
    }
}
