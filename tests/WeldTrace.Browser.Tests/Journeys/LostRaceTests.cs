using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>Two people at one record: the second is told, and loses nothing of what was entered.</summary>
public sealed class LostRaceTests(SiteFixture site)
{
    [Fact]
    public async Task Person_EditedByTwo_TellsTheSecondWhoWasFaster()
    {
        await using var first = await OpenAsync(DemoPeople.Administrator);
        await using var second = await OpenAsync(DemoPeople.QualityManager);
        await first.FillAsync("Printed name", "Noor Haddad, lead auditor");
        await second.FillAsync("Printed name", "Noor A. Haddad");

        await first.PressAsync("Save");
        await first.SeesAsync("Noor Haddad, lead auditor");
        await second.PressAsync("Save");

        await second.SeesAsync("Mirela Popa changed Noor");
        await second.SeesAsync("while you were working");
        Assert.Equal(
            "Noor A. Haddad",
            await second.Page.GetByLabel("Printed name").InputValueAsync()
        );
        await second.FindsAccessibleAsync();

        // Whoever has read the warning may save again.
        await second.PressAsync("Save");
        await second.SeesAsync("Noor A. Haddad");
        await second.SeesAsync("Roles");
        await second.Page.ArrivesAtAsync("**/people");
    }

    private async Task<Visitor> OpenAsync(DemoPerson editor)
    {
        var visitor = await Visitor.SignInAsync(site, editor);
        await visitor.GoToAsync("/people");
        await visitor.FollowAsync("Noor Haddad");
        await visitor.Page.ArrivesAtAsync("**/people/*-*");
        await visitor.SeesAsync("May sign in");
        return visitor;
    }
}
