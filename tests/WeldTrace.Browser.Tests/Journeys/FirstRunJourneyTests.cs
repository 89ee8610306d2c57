using Microsoft.Playwright;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>A site that nobody has set up yet, and its first people.</summary>
public sealed class FirstRunJourneyTests(SiteFixture shared)
{
    private const string AdministratorsPassword = "heavy brass at low tide";
    private const string FirstPassword = "given on paper, once only";
    private const string OwnPassword = "my own words, far longer";

    [Fact]
    public async Task EmptySite_IsSetUpAndItsFirstOperatorSignsIn()
    {
        var folder = OwnSite.NewFolder();
        try
        {
            await using var site = new OwnSite(folder, OwnSite.FreePort(), false).Started();
            await using var first = await Visitor.OpenAsync(shared.Browser, site.Address);
            await SetUpAsync(first);
            await EnterOperatorAsync(first);

            await using var second = await Visitor.OpenAsync(shared.Browser, site.Address);
            await SignInFirstTimeAsync(second);

            // A passkey belongs to a host name, which an address of numbers is not.
            var named = new UriBuilder(site.Address) { Host = "localhost" }.Uri;
            await using var third = await Visitor.OpenAsync(shared.Browser, named);
            await PasskeyJourney.WalkAsync(third, "aino", AdministratorsPassword);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task SetUpAsync(Visitor visitor)
    {
        await visitor.GoToAsync("/vessels");
        await visitor.SeesAsync("Set up the site");
        await visitor.PressAsync("Set up");
        await visitor.SeesAsync("Give the site's name");
        await visitor.SeesAsync("Give the printed name");
        await visitor.FillAsync("Name of the site", "Skerry Pressure Works");
        await visitor.ChooseAsync("Time zone", "Europe/Lisbon");
        await visitor.ChooseAsync("Preferred units", "InchPound");
        await visitor.FillAsync("Printed name", "Aino Kettunen");
        await visitor.FillAsync("Sign-in name", "aino");
        await visitor.FillAsync("Password", "too short");
        await visitor.PressAsync("Set up");
        await visitor.SeesAsync("Nothing was saved yet");
        await visitor.FindsAccessibleAsync();
        await visitor.FillAsync("Password", AdministratorsPassword);
        await visitor.PressAsync("Set up");
        await visitor.SignInAsync("aino", AdministratorsPassword);
        await visitor.SeesAsync("My work");
        await visitor.SeesAsync("Skerry Pressure Works");
    }

    private static async Task EnterOperatorAsync(Visitor visitor)
    {
        await visitor.GoToAsync("/people/new");
        await visitor.FillAsync("Printed name", "Bela Farkas");
        await visitor.FillAsync("Sign-in name", "bela");
        await visitor.FillAsync("First password", FirstPassword);
        await visitor.PressAsync("Save");
        await visitor.SeesAsync("Choose at least one role");
        await visitor.Page.GetByLabel("operator").CheckAsync();
        await visitor.FillAsync("First password", FirstPassword);
        await visitor.PressAsync("Save");
        await visitor.SeesAsync("Bela Farkas");
        Assert.Equal(0, await visitor.Page.GetByText("float deeper").CountAsync());
    }

    private static async Task SignInFirstTimeAsync(Visitor visitor)
    {
        await visitor.GoToAsync("/");
        Assert.Equal(0, await visitor.Page.GetByText("Demonstration").CountAsync());
        await visitor.SignInAsync("bela", FirstPassword);
        await visitor.SeesAsync("Change your password");
        await visitor.FindsAccessibleAsync();
        await visitor.FillAsync("Password now", FirstPassword);
        await visitor.FillAsync("New password", OwnPassword);
        await visitor.PressAsync("Change");
        await visitor.SeesAsync("Your password is changed.");
        await visitor.FollowAsync("Back to my work");
        await visitor.SeesAsync("Nothing waits for you.");
        await visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await visitor.SeesAsync("Sign-in name");
        await visitor.SignInAsync("bela", FirstPassword);
        await visitor.SeesAsync("not right");
    }
}
