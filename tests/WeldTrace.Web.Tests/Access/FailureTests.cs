using System.Net;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Files;

namespace WeldTrace.Web.Tests.Access;

/// <summary>A form that fails gets an answer that says so, as an address that fails does.</summary>
[Collection(typeof(DemoSiteGroup))]
public sealed class FailureTests(DemoSite site)
{
    [Fact]
    public async Task Form_ThatFailsOnTheServer_GetsThePageThatSaysSo()
    {
        var visit = await site.VisitAsync(DemoPeople.QualityManager);
        site.IsSigningBroken = true;

        var answer = await visit.PostAsync(Routes.Checkpoints, "checkpoint", []);

        site.IsSigningBroken = false;
        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Equal("Something failed", (await SiteVisit.PageAsync(answer)).Title);
    }

    [Fact]
    public async Task Form_WithAFileTooLarge_SaysSo_AndNotThatItWasForged()
    {
        using var visit = new SiteVisit(site.Address) { AsksFirst = true };
        await visit.SignInAsync(DemoPeople.QualityManager.SignInName, DemoPeople.Password);
        var before = await site.LedgerSizeAsync();

        var answer = await visit.PostAsync(
            Routes.NewMaterialLot,
            "new-lot",
            [new("In.File", SentForm.File(new byte[PaperReader.MostRequestBytes]))]
        );

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains(
            "too large",
            await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken),
            StringComparison.Ordinal
        );
        Assert.Equal(before, await site.LedgerSizeAsync());
    }
}
