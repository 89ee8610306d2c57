using System.Net;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>PostgreSQL keeps no NUL character in a text; a request with one is told so instead of failing.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class NulTests(DemoSite site)
{
    [Theory]
    [InlineData("/vessels?serial=%00")]
    [InlineData("/vessels.csv?serial=NR%0010")]
    [InlineData("/open?code=%00")]
    [InlineData("/vessels/NR10%00")]
    public async Task Address_WithNul_IsRefused(string path)
    {
        var auditor = await site.VisitAsync(DemoPeople.Auditor);

        Assert.Equal(HttpStatusCode.BadRequest, (await auditor.GetAsync(path)).StatusCode);
    }

    [Fact]
    public async Task SignInName_WithNul_IsRefused()
    {
        using var visit = new SiteVisit(site.Address);

        var answer = await visit.PostAsync(
            Routes.SignIn,
            "sign-in",
            [new("In.Name", "audi\0tor"), new("In.Password", DemoPeople.Password)]
        );

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Fact]
    public async Task Form_WithNul_IsRefused_AndSavesNothing()
    {
        var visit = await site.VisitAsync(DemoPeople.Operator);
        var machine = (await DemoAddresses.ReadAsync(site))["/equipment/machines/{Id}/report"];
        var before = await site.LedgerSizeAsync();

        var answer = await visit.PostAsync(
            machine,
            "report",
            [
                new("In.Kind", "Doubt"),
                new("In.On", FormTable.Today),
                new("In.Text", "Noise\0 in the spindle"),
            ]
        );

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(before, await site.LedgerSizeAsync());
    }
}
