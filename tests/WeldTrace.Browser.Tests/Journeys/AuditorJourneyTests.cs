using Microsoft.Playwright;
using UglyToad.PdfPig;
using WeldTrace.Verify;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

public sealed class AuditorJourneyTests(SiteFixture site)
{
    [Fact]
    public async Task Vessel_FoundBySerial_PrintsItsTravelerAndABundleThatVerifies()
    {
        await using var auditor = await Visitor.SignInAsync(site, DemoPeople.Auditor);
        await auditor.GoToAsync("/vessels");
        await auditor.FillAsync("Serial number", "NR10-0001");
        await auditor.PressAsync("Show");
        await auditor.FollowAsync("NR10-0001");
        await auditor.SeesAsync("Final acceptance");
        await auditor.SeesAsync("I accept this vessel on the records as stated.");

        var traveler = await auditor.DownloadAsync("/vessels/NR10-0001/traveler.pdf");
        var bundle = await auditor.DownloadAsync("/vessels/NR10-0001/history.zip");

        using var pdf = PdfDocument.Open(traveler);
        var text = string.Join('\n', pdf.GetPages().Select(p => p.Text));
        Assert.Contains("NR10-0001", text, StringComparison.Ordinal);
        Assert.Contains("page 1 of", text, StringComparison.Ordinal);
        Assert.Contains("Amara Diallo", text, StringComparison.Ordinal);
        Assert.Empty(BundleVerifier.Verify(new MemoryStream(bundle)).Problems);
        bundle[bundle.Length / 2] ^= 1;
        Assert.NotEmpty(BundleVerifier.Verify(new MemoryStream(bundle)).Problems);
    }

    [Fact]
    public async Task Histories_OfTickedVessels_AreOrderedWatchedAndFetched_AndVerify()
    {
        await using var auditor = await Visitor.SignInAsync(site, DemoPeople.Auditor);
        await auditor.GoToAsync("/trace");
        await auditor.FollowAsync("Order their histories (ZIP)");
        await auditor.Page.GetByLabel("NR10-0009").CheckAsync();
        await auditor.Page.GetByLabel("NR10-0010").CheckAsync();
        await auditor.PressAsync("Order those ticked");

        // The page shows by itself that the order has come to its end.
        await auditor.SeesAsync("Download the histories");
        await auditor.FindsAccessibleAsync();
        var zip = await auditor.DownloadAsync(
            new Uri(auditor.Page.Url).AbsolutePath + "/histories.zip"
        );

        var report = CollectionVerifier.Verify(new MemoryStream(zip));
        Assert.True(report.IsVerified);
        Assert.Equal(["NR10-0009", "NR10-0010"], report.Bundles.Select(b => b.VesselSerial));
    }

    /// <summary>WCAG 2.2, 2.1.1: the drawing is walked by keys alone, along its lines.</summary>
    [Fact]
    public async Task Genealogy_IsWalkedByKeys_FromTheVesselOverARunToItsTool()
    {
        await using var auditor = await Visitor.SignInAsync(site, DemoPeople.Auditor);
        await auditor.GoToAsync("/vessels/NR10-0001");
        await auditor.FollowAsync("Everything that made it (genealogy)");
        await auditor.SeesAsync("Everything that made NR10-0001");
        Keyboard keys = new(auditor.Page);
        await keys.ReachAsync("Vessel: NR10-0001");

        Assert.StartsWith("Components:", await WalkAsync("ArrowLeft"), StringComparison.Ordinal);
        Assert.StartsWith("Material lots:", await WalkAsync("ArrowLeft"), StringComparison.Ordinal);
        Assert.StartsWith("Vessel: NR10-0001", await WalkAsync("Home"), StringComparison.Ordinal);
        var work = await WalkAsync("ArrowRight");
        while (!work.StartsWith("Weld runs:", StringComparison.Ordinal))
        {
            var next = await WalkAsync("ArrowDown");
            Assert.NotEqual(work, next);
            work = next;
        }

        var means = await WalkAsync("ArrowRight");
        for (var above = ""; above != means; )
        {
            above = means;
            means = await WalkAsync("ArrowUp");
        }

        while (!means.StartsWith("Tools:", StringComparison.Ordinal))
        {
            var next = await WalkAsync("ArrowDown");
            Assert.NotEqual(means, next);
            means = next;
        }

        await auditor.Page.Keyboard.PressAsync("Enter");
        await auditor.Page.ArrivesAtAsync("**/tools/*");

        async Task<string> WalkAsync(string key)
        {
            await auditor.Page.Keyboard.PressAsync(key);
            return await auditor.Page.EvaluateAsync<string>(
                "() => document.activeElement.getAttribute('aria-label') ?? ''"
            );
        }
    }

    /// <summary>From the list of places to the chart and on by keys: the cursor, the seam and the section tell of one place (WCAG 2.2, 2.1.1).</summary>
    [Fact]
    public async Task Run_CursorAtTheSection_TellsItsPlace_AndMovesByKeys()
    {
        await using var auditor = await Visitor.SignInAsync(site, DemoPeople.Auditor);
        await auditor.GoToAsync("/vessels/NR10-0001");
        var run = auditor.Page.Locator("a[href^='/runs/']").First;
        await auditor.GoToAsync((await run.GetAttributeAsync("href"))!);
        await auditor.Page.Locator(".uplot").First.WaitForAsync();
        Keyboard keys = new(auditor.Page);
        await keys.ReachAsync("Show a on the chart, 52.7 s");

        await auditor.Page.Keyboard.PressAsync("Enter");

        var told = auditor.Page.Locator("[data-chart-cursor]");
        Assert.Contains(
            "120.0° from the start; a: section",
            await told.InnerTextAsync(),
            StringComparison.Ordinal
        );
        var hand = auditor.Page.Locator("[data-seam-cursor]");
        Assert.Equal("visible", await hand.GetAttributeAsync("visibility"));
        for (var i = 0; i < 10; i++)
        {
            await auditor.Page.Keyboard.PressAsync("Shift+ArrowRight");
        }

        Assert.DoesNotContain("section", await told.InnerTextAsync(), StringComparison.Ordinal);
        await auditor.FindsAccessibleAsync();
        await auditor
            .Page.GetByRole(AriaRole.Link, new() { Name = "NR10-0001 section of J1, step 70" })
            .ClickAsync();
        await auditor.SeesAsync("Where it was cut");
    }

    [Fact]
    public async Task Ledger_OfTheDemonstration_IsWhole()
    {
        await using var auditor = await Visitor.SignInAsync(site, DemoPeople.Auditor);
        await auditor.GoToAsync("/ledger/check");

        await auditor.PressAsync("Check the whole ledger");

        await auditor.SeesAsync("Nothing was changed");
    }

    [Theory]
    [InlineData("/vessels/new")]
    [InlineData("/procedures/new")]
    [InlineData("/tools/new")]
    [InlineData("/tools/designs/new")]
    [InlineData("/people/new")]
    [InlineData("/site")]
    [InlineData("/equipment/machines/new")]
    [InlineData("/equipment/material/new")]
    [InlineData("/vessels/NR10-0001/ship")]
    public async Task ActingPage_ForTheAuditor_IsNotAllowed(string path)
    {
        await using var auditor = await Visitor.SignInAsync(site, DemoPeople.Auditor);

        await auditor.GoToAsync(path);

        await auditor.SeesAsync("Not for your role");
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/vessels/NR10-0001")]
    [InlineData("/vessels/NR10-0001/traveler.pdf")]
    [InlineData("/vessels/NR10-0001/history.zip")]
    [InlineData("/vessels.csv")]
    [InlineData("/ledger")]
    public async Task AnyPage_WithoutSigningIn_AsksForIt(string path)
    {
        await using var context = await site.Browser.NewContextAsync();

        var response = await context.APIRequest.GetAsync(
            new Uri(site.Address, path).AbsoluteUri,
            new() { MaxRedirects = 0 }
        );

        Assert.Equal(302, response.Status);
        Assert.Contains("/sign-in", response.Headers["location"], StringComparison.Ordinal);
    }
}
