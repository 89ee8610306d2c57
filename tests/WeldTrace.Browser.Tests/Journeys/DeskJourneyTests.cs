using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>The engineer calculates at the desk, without any vessel.</summary>
public sealed class DeskJourneyTests(SiteFixture site)
{
    [Fact]
    public async Task Desk_FieldMended_ShowsResultWorkingAndKeepsItInTheAddress()
    {
        await using var engineer = await Visitor.SignInAsync(site, DemoPeople.Engineer);
        await engineer.GoToAsync("/");
        await engineer.FollowAsync("Desk: calculations without a vessel");
        await engineer.FollowAsync("Vessel sizing and pressure ladder");
        await engineer.FillAsync("Burst factor", "1.2");
        await engineer.PressAsync("Calculate");
        await engineer.SeesAsync("Nothing is calculated yet");
        await engineer.FindsAccessibleAsync();
        await engineer.FillAsync("Burst factor", "2.5");
        await engineer.PressAsync("Calculate");

        // 2.5 times 60 bar.
        await engineer.SeesAsync("150.0 bar");
        Assert.Contains("burst=2.5", engineer.Page.Url, StringComparison.Ordinal);
        await engineer.FollowAsync("The whole working on one page");
        await engineer.SeesAsync("How was this worked out?");
        await engineer.SeesAsync("burst factor");
        await engineer.FindsAccessibleAsync();
    }
}
