using Microsoft.Playwright;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>The engineer draws the next revision of a vessel.</summary>
public sealed class DesignJourneyTests(SiteFixture site)
{
    [Fact]
    public async Task Design_RevisedWithAFault_IsMendedAndReleasedBySecondPerson()
    {
        await using var engineer = await Visitor.SignInAsync(site, DemoPeople.Engineer);
        await engineer.GoToAsync("/designs");
        await engineer.FollowAsync("NR-10 rev A");
        await engineer.FillAsync("Why", "Thicker wall for deeper floats");
        // A glove presses twice, and sends once.
        var posts = 0;
        engineer.Page.Request += (_, request) => posts += request.Method == "POST" ? 1 : 0;
        await engineer
            .Page.GetByRole(AriaRole.Button, new() { Name = "Make the next revision" })
            .DblClickAsync();
        await engineer.Page.ArrivesAtAsync("**/designs/*/edit");
        Assert.Equal(1, posts);
        await engineer.FillAsync("Title", "");
        await engineer.PressAsync("Save the draft");
        await engineer.SeesAsync("Give the title");
        await engineer.FindsAccessibleAsync();
        await engineer.FillAsync("Title", "Nitrogen reservoir, 10 litres, deep");
        await engineer.PressAsync("Save the draft");
        await engineer.SeesAsync("Sign and release");
        await engineer.SeesAsync("Nitrogen reservoir, 10 litres, deep");
        var address = new Uri(engineer.Page.Url).AbsolutePath;

        await using var quality = await Visitor.SignInAsync(site, DemoPeople.QualityManager);
        await quality.GoToAsync(address);
        await quality.SignForGoodAsync("Sign and release");
        await quality.SeesAsync("I release this design for production.");
    }
}
