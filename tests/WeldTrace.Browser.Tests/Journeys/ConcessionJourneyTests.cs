using Microsoft.Playwright;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>A rule that forbids a run is waived by two people, for that run.</summary>
public sealed class ConcessionJourneyTests(SiteFixture shared)
{
    private const string Reason =
        "Wrapped since cleaning; a wipe test this evening showed a clean faying surface.";
    private const string Step = "/vessels/NR10-0006/weld/40?machine=Gantry+1&tool=T-0141";

    private static readonly TimeSpan LongerThanTheCleaningHolds = TimeSpan.FromHours(5);

    private static readonly string[] Checks =
    [
        "Fit-up, jigging and tacking",
        "Parameters set as in the procedure",
        "Preheat and interpass temperature",
    ];

    [Fact]
    public async Task Concession_OfTwoPeople_LetsTheRunStartAndStandsOnTheTraveler()
    {
        await using var workshop = await OwnWorkshop.OpenAsync(shared);
        workshop.Clock.Pass(LongerThanTheCleaningHolds);
        await using var welder = await workshop.SignInAsync(DemoPeople.Operator, 820);
        await welder.GoToAsync(Step);
        await welder.SeesAsync("1 of 9 rules forbid it");
        Assert.True(await Start(welder).IsDisabledAsync());

        await using var engineer = await workshop.SignInAsync(DemoPeople.Engineer);
        await engineer.GoToAsync(Step);
        await engineer.FollowAsync("Ask for a concession of F8");
        await engineer.FillAsync("Why the rule may be waived", Reason);
        await engineer.SignAsync("Sign and ask");
        await engineer.Page.ArrivesAtAsync("**/concessions/*");
        await engineer.SeesAsync("awaits the second signature");
        var concession = new Uri(engineer.Page.Url).AbsolutePath;

        await using var quality = await workshop.SignInAsync(DemoPeople.QualityManager);
        await quality.GoToAsync("/");
        await quality.Page.Locator($"a[href='{concession}']").ClickAsync();
        await quality.SeesAsync(Reason);
        await quality.SignForGoodAsync("Sign and grant");
        await quality.SeesAsync("granted");

        await StartAsync(welder);
        await AssertTravelerTellsAsync(welder);
    }

    private static async Task StartAsync(Visitor welder)
    {
        await welder.GoToAsync(Step);
        Assert.Contains(
            "Waived",
            await welder.Page.Locator("#rule-F8").InnerTextAsync(),
            StringComparison.OrdinalIgnoreCase
        );
        foreach (var check in Checks)
        {
            await welder.Page.GetByLabel(check).CheckAsync();
        }

        await welder.Page.GetByLabel("counter-clockwise", new() { Exact = true }).CheckAsync();
        await Start(welder).ClickAsync();
        await welder.Page.ArrivesAtAsync("**/runs/*/end");
    }

    private static async Task AssertTravelerTellsAsync(Visitor visitor)
    {
        var traveler = PdfText.Of(await visitor.DownloadAsync("/vessels/NR10-0006/traveler.pdf"));
        Assert.Contains("F8", traveler, StringComparison.Ordinal);
        Assert.Contains("Edwin Castle", traveler, StringComparison.Ordinal);
        Assert.Contains(
            PdfText.Letters(Reason),
            PdfText.Letters(traveler),
            StringComparison.Ordinal
        );
    }

    private static ILocator Start(Visitor visitor) =>
        visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Start run" });
}
