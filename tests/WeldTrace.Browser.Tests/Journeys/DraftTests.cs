using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>What is half entered outlives a closed tab, a dropped connection and a restart of the server.</summary>
public sealed class DraftTests(SiteFixture shared)
{
    private const string Remark = "Groove wiped twice, clamp ring seated";

    [Fact]
    public async Task LeakTest_HalfEntered_OutlivesAClosedTabAndARestart()
    {
        var (folder, port) = (OwnSite.NewFolder(), OwnSite.FreePort());
        try
        {
            await shared.CopyWorkshopAsync(folder);
            await using var site = new OwnSite(folder, port, true).Started();
            await using var visitor = await Visitor.OpenAsync(shared.Browser, site.Address);
            await visitor.GoToAsync("/sign-in");
            await visitor.SignInAsync(DemoPeople.Inspector.SignInName, DemoPeople.Password);
            await visitor.GoToAsync("/vessels/NR10-0004/leak/80");
            await visitor.Page.GetByLabel("Reading 1: gauge pressure in bar").FillAsync("10.0500");
            await visitor.FillAsync("Barometer", "1012");
            await visitor.NewTabAsync();
            await site.DisposeAsync();

            await using var again = new OwnSite(folder, port, true).Started();
            await visitor.GoToAsync("/vessels/NR10-0004/leak/80");

            await visitor.SeesAsync("stands here again; it is not saved yet");
            Assert.Equal("1012", await visitor.Page.GetByLabel("Barometer").InputValueAsync());
            Assert.Equal(
                "10.0500",
                await visitor.Page.GetByLabel("Reading 1: gauge pressure in bar").InputValueAsync()
            );
            await visitor.FindsAccessibleAsync();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task SignOff_SentWithoutAConnection_IsSaidAndSentAgain()
    {
        await using var visitor = await Visitor.SignInAsync(shared, DemoPeople.Operator, 820);
        await visitor.GoToAsync("/vessels/NR10-0009/sign-off/10");
        await visitor.Page.GetByLabel("Remark").FillAsync(Remark);
        await visitor.NameAsync();
        await visitor.FillAsync("Your password", DemoPeople.Password);
        await visitor.Page.Context.SetOfflineAsync(true);

        await visitor.PressAsync("Sign");
        await visitor.SeesAsync("Not connected");
        Assert.Equal(Remark, await visitor.Page.GetByLabel("Remark").InputValueAsync());
        await visitor.Page.Context.SetOfflineAsync(false);
        await visitor.PressAsync("Sign");

        await visitor.SeesAsync("I confirm the preparation as stated.");
        await visitor.SeesAsync(Remark);
    }
}
