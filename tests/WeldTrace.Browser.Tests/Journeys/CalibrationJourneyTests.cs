using System.Globalization;
using Microsoft.Playwright;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>A gauge comes back from its calibration out of tolerance.</summary>
public sealed class CalibrationJourneyTests(SiteFixture shared)
{
    private const string Gauge = "G-12";

    [Fact]
    public async Task Calibration_OutOfTolerance_IsTracedToItsRecordsAndToTheVessel()
    {
        await using var workshop = await OwnWorkshop.OpenAsync(shared);
        await using var quality = await workshop.SignInAsync(DemoPeople.QualityManager);
        await quality.GoToAsync("/equipment/instruments");
        await quality.FollowAsync(Gauge);
        await CalibrateAsync(quality, workshop.Clock.Today.AddDays(1));
        await quality.SeesAsync("lies in the future");
        await CalibrateAsync(quality, workshop.Clock.Today);
        await quality.SeesAsync("must be reviewed");
        await quality.FindsAccessibleAsync();
        var records = await quality
            .Page.Locator(".notice", new() { HasText = "must be reviewed" })
            .GetByRole(AriaRole.Link)
            .AllInnerTextsAsync();
        Assert.Contains(records, r => r.Contains("leak", StringComparison.OrdinalIgnoreCase));

        await using var inspector = await workshop.SignInAsync(DemoPeople.Inspector);
        await inspector.GoToAsync("/findings?state=Open");
        var finding = inspector.Page.Locator("tbody tr", new() { HasText = Gauge }).First;
        var serial = await finding.GetByRole(AriaRole.Link).Nth(1).InnerTextAsync();
        await finding.GetByRole(AriaRole.Link).First.ClickAsync();
        await inspector.SeesAsync($"{Gauge} was found out of tolerance");
        await inspector.FollowAsync(serial);
        await inspector.SeesAsync("on hold");
    }

    private static async Task CalibrateAsync(Visitor visitor, DateOnly on)
    {
        await visitor.FillAsync(
            "Day of the calibration",
            on.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
        await visitor.FillAsync("Laboratory", "Fjord calibration room");
        await visitor.FillAsync("Number of its certificate", "FC-5120");
        await visitor.FillAsync("Largest error found", "0.35");
        await visitor.PressAsync("Enter the calibration");
    }
}
