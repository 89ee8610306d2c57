using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>Two people at one record: the second is told, and loses nothing of what was entered.</summary>
public sealed class LostRaceTests(SiteFixture site)
{
    [Fact]
    public async Task Draft_EditedByTwo_TellsTheSecondWhoWasFaster()
    {
        await using var first = await Visitor.SignInAsync(site, DemoPeople.Engineer);
        await first.GoToAsync("/procedures");
        await first.FollowAsync("WP-101 rev B");
        await first.FillAsync("Why", "Race of two editors");
        await first.PressAsync("Make the next revision");
        await first.SeesAsync("Save the draft");
        var address = new Uri(first.Page.Url).AbsolutePath;
        await using var second = await Visitor.SignInAsync(site, DemoPeople.Engineer);
        await second.GoToAsync(address);
        await second.FillAsync("Title", "The second title");

        await first.FillAsync("Title", "The first title");
        await first.PressAsync("Save the draft");
        await first.SeesAsync("Put on trial");
        await second.PressAsync("Save the draft");

        await second.SeesAsync("changed WP-101");
        await second.SeesAsync("while you were working");
        Assert.Equal("The second title", await second.Page.GetByLabel("Title").InputValueAsync());
        await second.FindsAccessibleAsync();
    }
}
