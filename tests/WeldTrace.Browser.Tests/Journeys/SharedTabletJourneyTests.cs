using System.Text;
using System.Text.RegularExpressions;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>A tablet at a welding cell: registered, a badge and a PIN made, and one person after the other at it, each with their own entries.</summary>
public sealed partial class SharedTabletJourneyTests(SiteFixture site)
{
    private const string Pin = "482913";
    private const string Report = "/vessels/NR10-0002/findings/new";
    private const string Found = "Scratch beside the seam, 40 mm long";

    [Fact]
    public async Task Person_TakesOver_ByBadgeAndPin_AndHalfEnteredFormsStayTheirs()
    {
        await using var tablet = await Visitor.SignInAsync(site, DemoPeople.QualityManager, 820);
        var badge = await PrepareAsync(tablet);
        await tablet.PressAsync("Sign out");
        await tablet.SeesAsync("Who works here now?");
        await tablet.FollowAsync("Sign in another way");
        await tablet.SignInAsync(DemoPeople.Operator.SignInName, DemoPeople.Password);
        await tablet.SeesAsync("My work");
        await SetPinAsync(tablet);
        await tablet.GoToAsync(Report);
        await tablet.FillAsync("What was found", Found);

        await tablet.FollowAsync("Change person");
        await ScanAsync(tablet, DemoPeople.Engineer.SignInName);
        await tablet.FillAsync("PIN or password", DemoPeople.Password);
        await tablet.PressAsync("Sign in");
        await tablet.SeesAsync(DemoPeople.Engineer.PrintedName);
        await tablet.SeesAsync("My work");
        await tablet.GoToAsync(Report);
        Assert.Equal("", await FoundAsync(tablet));

        await tablet.FollowAsync("Change person");
        await tablet.FindsAccessibleAsync();
        await ScanAsync(tablet, badge);
        await tablet
            .Page.GetByRole(
                Microsoft.Playwright.AriaRole.Heading,
                new() { Name = DemoPeople.Operator.PrintedName }
            )
            .WaitForAsync();
        await tablet.FindsAccessibleAsync();
        await tablet.Page.Keyboard.TypeAsync(Pin);
        await tablet.Page.Keyboard.PressAsync("Enter");
        await tablet.SeesAsync("My work");
        await tablet.GoToAsync(Report);
        await tablet.SeesAsync("stands here again");
        Assert.Equal(Found, await FoundAsync(tablet));

        await tablet.GoToAsync("/vessels/NR10-0012/sign-off/10");
        await tablet.SeesAsync("Your sign-in name");
    }

    // The badge is read as a scanner would read it: from its file.
    private static async Task<string> PrepareAsync(Visitor tablet)
    {
        await tablet.GoToAsync("/site/tablets");
        await tablet.FillAsync("Where it is used", "Tablet at welding cell 2");
        await tablet.PressAsync("Register this device");
        await tablet.SeesAsync("This device is registered as Tablet at welding cell 2");
        await tablet.FindsAccessibleAsync();
        await tablet.GoToAsync("/people");
        await tablet.FollowAsync(DemoPeople.Operator.PrintedName);
        var file = await tablet.Page.RunAndWaitForDownloadAsync(() =>
            tablet.PressAsync("Make a badge")
        );
        var bytes = await File.ReadAllBytesAsync(
            await file.PathAsync(),
            TestContext.Current.CancellationToken
        );
        await tablet.Page.ReloadAsync();
        await tablet.SeesAsync("has a badge");
        return Badge().Match(Encoding.Latin1.GetString(bytes)).Value;
    }

    private static async Task SetPinAsync(Visitor tablet)
    {
        await tablet.GoToAsync("/me/pin");
        await tablet.FillAsync("Your password", DemoPeople.Password);
        await tablet.FillAsync("New PIN", Pin);
        await tablet.FillAsync("The PIN again", Pin);
        await tablet.PressAsync("Set the PIN");
        await tablet.SeesAsync("Done.");
        await tablet.FindsAccessibleAsync();
    }

    // The field has the focus already, and a scanner ends with Enter.
    private static async Task ScanAsync(Visitor tablet, string code)
    {
        await tablet.SeesAsync("Who works here now?");
        await tablet.Page.Keyboard.TypeAsync(code);
        await tablet.Page.Keyboard.PressAsync("Enter");
        await tablet.SeesAsync("PIN or password");
    }

    private static Task<string> FoundAsync(Visitor tablet) =>
        tablet.Page.GetByLabel("What was found", new() { Exact = true }).InputValueAsync();

    [GeneratedRegex("BADGE[0-9A-F]{40}")]
    private static partial Regex Badge();
}
