using System.Globalization;
using Microsoft.Playwright;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>A welder's certificate runs out while nobody is at work.</summary>
public sealed class ExpiryJourneyTests(SiteFixture shared)
{
    private const string Number = "OPQ-0240";
    private const string Step = "/vessels/NR10-0006/weld/40?machine=Gantry+1&tool=T-0141";
    private const int TabletWidth = 820;

    [Fact]
    public async Task Certificate_ThatExpiresOvernight_IsWarnedOfAndBlocksTheMorningsRun()
    {
        await using var workshop = await OwnWorkshop.OpenAsync(shared);
        var tomorrow = workshop.Clock.Today.AddDays(1);
        await IssueAsync(workshop, tomorrow);

        await using var evening = await workshop.SignInAsync(DemoPeople.Engineer, TabletWidth);
        await evening.GoToAsync("/");
        await evening.SeesAsync($"Renew {Number} of Ingrid Solheim by {Show(tomorrow)}");
        await evening.SeesAsync("1 day left");
        await evening.GoToAsync(Step);
        Assert.Contains("Holds", await OperatorsRuleAsync(evening), StringComparison.Ordinal);

        workshop.Clock.Pass(TimeSpan.FromDays(1));
        await using var morning = await workshop.SignInAsync(DemoPeople.Engineer, TabletWidth);
        await morning.SeesAsync("ran out");
        await morning.GoToAsync(Step);
        var rule = await OperatorsRuleAsync(morning);
        Assert.Contains("Forbids", rule, StringComparison.Ordinal);
        Assert.Contains($"{Number} expired on {Show(tomorrow)}", rule, StringComparison.Ordinal);
        Assert.True(
            await morning
                .Page.GetByRole(AriaRole.Button, new() { Name = "Start run" })
                .IsDisabledAsync()
        );

        await morning.Page.Locator("#rule-F4 .rule-links a").First.ClickAsync();
        await morning.SeesAsync($"{Number}: Ingrid Solheim");
        await morning.SeesAsync("expired");
    }

    private static async Task IssueAsync(OwnWorkshop workshop, DateOnly expires)
    {
        await using var quality = await workshop.SignInAsync(DemoPeople.QualityManager);
        await quality.GoToAsync("/people/certificates/new?kind=WeldingOperator");
        await quality.ChooseAsync("Whose it is", DemoPeople.Engineer.PrintedName);
        await quality.FillAsync("Number of the certificate", Number);
        await quality.FillAsync("Issued by", "Northern examiners' board");
        await quality.FillAsync("Day of the test weld", Show(expires.AddMonths(-5)));
        await quality.FillAsync("Expires on", Show(expires));
        await quality.FillAsync("Welded to procedure", "WP-101 rev A");
        await quality.FillAsync("Variables as run", "6061-T6, 6 mm, 800 rev/min, 200 mm/min");
        await quality.Page.GetByLabel("Every prescribed test was passed").CheckAsync();
        await quality.Page.GetByLabel("The test of functional knowledge").CheckAsync();
        await quality.FillAsync("Joint types", "lap");
        await quality.FillAsync("Control mode of the machine", "force control");
        await quality.SignAsync("Sign and enter");
        await quality.SeesAsync($"{Number}: Ingrid Solheim");
    }

    private static Task<string> OperatorsRuleAsync(Visitor visitor) =>
        visitor.Page.Locator("#rule-F4").InnerTextAsync();

    private static string Show(DateOnly day) =>
        day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
