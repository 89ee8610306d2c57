using System.Net;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Tests.Access;

namespace WeldTrace.Web.Tests.Features.Desk;

/// <summary>The printed sheet comes from the address alone, for any role; what can't be calculated leads back to the page that says why.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class DeskSheetTests(DemoSite site)
{
    [Theory]
    [InlineData(Routes.DeskPassLayout)]
    [InlineData(Routes.DeskWindow)]
    [InlineData(Routes.DeskVessel)]
    [InlineData(Routes.DeskLeak)]
    [InlineData(Routes.DeskSafety)]
    [InlineData(Routes.DeskToolLife)]
    [InlineData(Routes.DeskSample)]
    public async Task Sheet_OfAnExample_IsAPdf(string path)
    {
        var visit = await site.VisitAsync(DemoPeople.Auditor);

        var answer = await visit.GetAsync(path + "/sheet.pdf");

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType?.MediaType);
        var bytes = await answer.Content.ReadAsByteArrayAsync(
            TestContext.Current.CancellationToken
        );
        Assert.StartsWith(
            "%PDF",
            System.Text.Encoding.Latin1.GetString(bytes[..8]),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Sheet_OfABadField_LeadsToThePageWithWhatWasTyped()
    {
        var visit = await site.VisitAsync(DemoPeople.Operator);

        var answer = await visit.GetAsync(
            Routes.DeskSample + "/sheet.pdf?content=ten&confidence=95"
        );

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var to = answer.Headers.Location!.ToString();
        Assert.StartsWith(Routes.DeskSample + "?", to, StringComparison.Ordinal);
        Assert.Contains("content=ten", to, StringComparison.Ordinal);
        var page = await SiteVisit.PageAsync(await visit.GetAsync(to));
        Assert.Contains(
            "'ten' is no number",
            page.QuerySelector("#content-error")!.TextContent,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Sheet_OfNoCalculation_IsNotFound()
    {
        var visit = await site.VisitAsync(DemoPeople.Auditor);

        Assert.Equal(
            HttpStatusCode.NotFound,
            (await visit.GetAsync("/desk/cheese/sheet.pdf")).StatusCode
        );
    }
}
