using System.Net;
using WeldTrace.Web.Demo;

namespace WeldTrace.Web.Tests.Access;

/// <summary>Nothing is taken from a page that this site did not show to this person.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class ForgeryTests(DemoSite site)
{
    private static readonly KeyValuePair<string, string>[] Components =
    [
        new("In.Serials", "FX-1"),
        new("In.PartKind", "shell"),
        new("In.MadeBy", "nobody"),
    ];

    [Fact]
    public async Task Form_WithoutItsToken_IsRefused()
    {
        var visit = await site.VisitAsync(DemoPeople.Operator);
        var before = await site.LedgerSizeAsync();

        var answer = await visit.PostBareAsync(Routes.NewComponent, "components", Components);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal("text/plain; charset=utf-8", answer.Content.Headers.ContentType?.ToString());
        Assert.Equal(before, await site.LedgerSizeAsync());
    }

    [Fact]
    public async Task Form_WithTheTokenOfAnother_IsRefused()
    {
        var visit = await site.VisitAsync(DemoPeople.Operator);
        var other = await site.VisitAsync(DemoPeople.Engineer);
        var before = await site.LedgerSizeAsync();

        var answer = await visit.PostBareAsync(
            Routes.NewComponent,
            "components",
            Components.Append(new(SiteVisit.TokenField, await other.TokenAsync()))
        );

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(before, await site.LedgerSizeAsync());
    }

    [Theory]
    [InlineData(Routes.SignOut)]
    [InlineData(Routes.ProcedureFigures)]
    public async Task Endpoint_WithoutAToken_IsRefused(string path)
    {
        using var visit = new SiteVisit(site.Address);
        await visit.SignInAsync(DemoPeople.Engineer.SignInName, DemoPeople.Password);

        var answer = await visit.PostBareAsync(path, null, [new("In.Title", "x")]);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await visit.GetAsync(Routes.Home)).StatusCode);
    }

    [Fact]
    public async Task SignOut_WithItsToken_EndsTheSession()
    {
        using var visit = new SiteVisit(site.Address);
        await visit.SignInAsync(DemoPeople.Auditor.SignInName, DemoPeople.Password);

        await visit.PostAsync(Routes.SignOut, null, []);

        Assert.Equal(HttpStatusCode.Redirect, (await visit.GetAsync(Routes.Home)).StatusCode);
    }

    /// <summary>A log is read as it arrives, so its endpoint looks at its token itself.</summary>
    [Fact]
    public async Task Log_WithoutItsToken_IsRefused()
    {
        var visit = await site.VisitAsync(DemoPeople.Operator);
        var path = (await DemoAddresses.ReadAsync(site))["/runs/{id}/log/file"];

        var answer = await visit.PostBareAsync(
            path,
            null,
            [new(SiteVisit.TokenField, "forged"), new("file", SentForm.File("t,z"u8.ToArray()))]
        );

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Theory]
    [InlineData("auditor")]
    [InlineData("admin")]
    public async Task Log_BroughtByARoleThatMayNot_IsRefused(string name)
    {
        var visit = await site.VisitAsync(DemoPeople.All.Single(p => p.SignInName == name));
        var path = (await DemoAddresses.ReadAsync(site))["/runs/{id}/log/file"];

        var answer = await visit.BringAsync(path, "t,z"u8.ToArray());

        Assert.Contains(
            AccessTable.NotAllowed,
            answer.Headers.Location!.ToString(),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("inspector")]
    [InlineData("quality")]
    public async Task Log_BroughtByARoleThatOnlyLooks_IsRefusedByTheRun(string name)
    {
        var visit = await site.VisitAsync(DemoPeople.All.Single(p => p.SignInName == name));
        var path = (await DemoAddresses.ReadAsync(site))["/runs/{id}/log/file"];

        var answer = await visit.BringAsync(path, "t,z"u8.ToArray());

        Assert.EndsWith(
            "?refused=role",
            answer.Headers.Location!.ToString(),
            StringComparison.Ordinal
        );
    }
}
