using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

public sealed class EngineerJourneyTests(SiteFixture site)
{
    [Fact]
    public async Task Design_OfTheReservoir_ShowsSidesOfEachPass()
    {
        await using var engineer = await Visitor.SignInAsync(site, DemoPeople.Engineer);
        await engineer.GoToAsync("/designs");
        await engineer.FollowAsync("NR-10 rev A");

        await engineer.SeesAsync("Joint J1: lower end to shell");
        var rows = await engineer
            .Page.Locator("table")
            .First.Locator("tbody tr")
            .AllInnerTextsAsync();

        // Spindle clockwise; travel counter-clockwise puts the advancing side inside, clockwise outside: from (w x r).v > 0.
        Assert.Collection(
            rows,
            first =>
                Assert.Matches("411.2.*21.64.*counter-clockwise\\s+advancing\\s+retreating", first),
            second => Assert.Matches("477.5.*25.13.*clockwise\\s+retreating\\s+advancing", second)
        );
    }

    [Fact]
    public async Task Procedure_RevisedAndQualified_IsReleasedBySecondPersonOnly()
    {
        await using var engineer = await Visitor.SignInAsync(site, DemoPeople.Engineer);
        await engineer.GoToAsync("/procedures");
        await engineer.FollowAsync("WP-101 rev A");
        await engineer.FillAsync("Why", "Trial of a faster travel inside the qualified window");
        await engineer.PressAsync("Make the next revision");
        await engineer.Page.ArrivesAtAsync("**/procedures/*/edit");
        await engineer.SeesAsync("0.250 mm/rev");
        await engineer.FillAsync("Travel speed, set point", "240");
        await engineer.SeesAsync("0.300 mm/rev");
        await engineer.PressAsync("Save the draft");
        await engineer.SeesAsync("outside 180 to 220 mm/min");
        await engineer.FindsAccessibleAsync();
        await engineer.FillAsync("Travel speed, set point", "216");
        // The figures follow what is typed; the button stands still once they have.
        await engineer.SeesAsync("0.270 mm/rev");
        await engineer.PressAsync("Save the draft");
        await engineer.SeesAsync("Put on trial");
        await engineer.SignAsync("Sign: Put on trial");
        await engineer.SeesAsync("Accept the qualification");
        var trial = new Uri(engineer.Page.Url).AbsolutePath;
        await engineer.GoToAsync(trial + "/qualify");
        await engineer.FindsAccessibleAsync();
        await engineer.GoToAsync(trial);
        await engineer.SignAsync("Sign: Accept the qualification");
        await engineer.SeesAsync("Release for production");
        await engineer.SignAsync("Sign: Release for production");
        await engineer.SeesAsync("its release needs a second person");
        var address = new Uri(engineer.Page.Url).AbsolutePath;

        await using var quality = await Visitor.SignInAsync(site, DemoPeople.QualityManager);
        await quality.GoToAsync(address);
        await quality.SignAsync("Sign: Release for production");
        await quality.SeesAsync("I release this procedure for production.");

        var sheet = PdfText.Of(await quality.DownloadAsync(address + "/sheet.pdf"));
        Assert.Contains("Parameter windows", sheet, StringComparison.Ordinal);
        Assert.Contains("Pass layout", sheet, StringComparison.Ordinal);
        // Another journey may have drawn a further revision in the meantime.
        Assert.Contains("J1 of NR-10", sheet, StringComparison.Ordinal);
    }
}
