using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>The inspector at the bench; every reading is invented.</summary>
public sealed class InspectorJourneyTests(SiteFixture site)
{
    [Fact]
    public async Task LeakTest_ByPressureDecay_IsComputedAndSigned()
    {
        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await visitor.GoToAsync("/vessels/NR10-0004/leak/80");
        await FillReadingAsync(visitor, 1, "0", "-10.05", "20.10");
        await FillReadingAsync(visitor, 2, "1800", "10.0494", "20.10");
        await FillReadingAsync(visitor, 3, "3600", "", "20.10");
        await visitor.FillAsync("Barometer", "1012");
        await visitor.FillAsync("Standard uncertainty of a gauge reading", "0.2");
        await visitor.FillAsync("Standard uncertainty of a temperature", "0.02");
        await visitor.FillAsync("Standard uncertainty of the volume", "0.5");
        await FillAsync(visitor, "Gauge", "G-12");
        await FillAsync(visitor, "Thermometer", "TH-3");
        await visitor.Page.GetByLabel("I have read the cautions above").CheckAsync();
        await visitor.SignAsync("Record and compute");
        await visitor.SeesAsync("Nothing was saved yet");
        await visitor.FindsAccessibleAsync();
        Assert.Equal("1800", await Reading(visitor, 2, "time in s").InputValueAsync());

        await FillReadingAsync(visitor, 1, "0", "10.0500", "20.10");
        await FillReadingAsync(visitor, 3, "3600", "10.0488", "20.10");
        await visitor.SignAsync("Record and compute");
        await visitor.SeesAsync("Pa·m³/s");
        await visitor.SeesAsync("mbar·l/s");
        await visitor.FindsAccessibleAsync();
        await visitor.SignForGoodAsync("Sign");
        await visitor.SeesAsync("I made this test, and the readings are as recorded.");

        await visitor.GoToAsync("/vessels/NR10-0004");
        await visitor.SeesAsync("Leak test before proof");
        Assert.Equal("/vessels/NR10-0004/steps/90", await NextStepAsync(visitor));
    }

    [Fact]
    public async Task PressureTest_AlongItsLadder_IsJudgedStageByStage()
    {
        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await visitor.GoToAsync("/vessels/NR10-0003/pressure/90");
        await visitor.SeesAsync("Stored energy");
        await BeginAsync(visitor);
        await visitor.SeesAsync("Confirm that you have read the cautions");
        await visitor.Page.GetByLabel("I have read the cautions above").CheckAsync();
        await visitor.PressAsync("Begin the test");
        await visitor.SeesAsync("Your password is not right");
        await visitor.SignAsync("Begin the test");
        await visitor.SeesAsync("Stage 1 of 3");

        await HoldAsync(visitor, "", "-40.1");
        await visitor.PressAsync("Record stage 1");
        await visitor.SeesAsync("Nothing was saved yet");
        await HoldAsync(visitor, "40.30", "37.10");
        await visitor.PressAsync("Record stage 1");
        await visitor.SeesAsync("may decide on its page");
        await visitor.FollowAsync("Look at the test and sign it");
        await RepeatHoldAsync(new Uri(visitor.Page.Url).AbsolutePath);
        await visitor.GoToAsync("/vessels/NR10-0003/pressure/90");
        await HoldAsync(visitor, "40.30", "40.10");
        await visitor.PressAsync("Record stage 1");
        await visitor.SeesAsync("Stage 2 of 3");
        await visitor.FillAsync("outer diameter at mid-length after the return to zero", "170.03");
        await visitor.FillAsync("outer diameter beside J2 after the return to zero", "170.07");
        await visitor.PressAsync("Record stage 2");
        await visitor.SeesAsync("Stage 3 of 3");
        await HoldAsync(visitor, "60.40", "60.10");
        await visitor.PressAsync("Record stage 3");
        await visitor.FollowAsync("Look at the test and sign it");
        await visitor.FindsAccessibleAsync();
        await visitor.SignForGoodAsync("Sign");
        await visitor.SeesAsync("I made this test, and the readings are as recorded.");
        await visitor.SeesAsync("before anything was pressurised, and the stand-off is kept");

        var paper = PdfText.Letters(await visitor.PaperAsync());
        Assert.Contains("Prooftestcertificate", paper, StringComparison.Ordinal);
        Assert.Contains("6040bar", paper, StringComparison.Ordinal);
        Assert.Contains("Theholdwasrepeated", paper, StringComparison.Ordinal);
        Assert.Contains("outerdiameteratmidlength17002mmbefore", paper, StringComparison.Ordinal);
        Assert.Contains("outerdiameterbesideJ217006mmbefore", paper, StringComparison.Ordinal);
        Assert.Contains("PermanentsetofouterdiameterbesideJ2", paper, StringComparison.Ordinal);
        Assert.Contains("Permanentsetofouterdiameter", paper, StringComparison.Ordinal);
        Assert.Contains("G31", paper, StringComparison.Ordinal);
        Assert.DoesNotContain("Notacertificate", paper, StringComparison.Ordinal);

        await visitor.GoToAsync("/vessels/NR10-0003");
        Assert.Equal("/vessels/NR10-0003/steps/100", await NextStepAsync(visitor));
    }

    // The engineer has found why the hold failed, and signs that it is done again.
    private async Task RepeatHoldAsync(string test)
    {
        await using var engineer = await Visitor.SignInAsync(site, DemoPeople.Engineer);
        await engineer.GoToAsync(test);
        await engineer.FindsAccessibleAsync();
        await engineer.FillAsync("Reason for the repeat", "The fitting at the inlet dripped.");
        await engineer.SignForGoodAsync("Sign: repeat the hold");
        await engineer.SeesAsync("The hold was repeated, decided by");
    }

    [Fact]
    public async Task Examination_WithACrackLikeFlaw_FailsTheStep_AndOpensAFinding()
    {
        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await visitor.GoToAsync("/vessels/NR10-0024/sign-off/60");
        await visitor.SignAsync("Sign");
        await visitor.SeesAsync("Nothing was signed. Please mend");
        await FillAsync(visitor, "Light on the weld", "800");
        await FillAsync(visitor, "Distance of the eye", "300");
        await FillAsync(visitor, "Angle of the eye to the surface", "60");
        await visitor.FillAsync("Surface, aids and products", "as welded, lens 2.5 times");
        await visitor.FillAsync("Examined", "both seams over 360°, outside");
        await visitor.FillAsync("Not examined, and why", "the inside, which the ends close");
        await visitor.ChooseAsync("Flaw 1: weld", "J2");
        await FillAsync(visitor, "Flaw 1: angle from the mark", "40");
        await FillAsync(visitor, "Flaw 1: what it is", "line at the toe");
        await FillAsync(visitor, "Flaw 1: length or diameter", "0.3");
        await visitor.Page.GetByLabel("Flaw 1 is like a crack").CheckAsync();
        await visitor.FindsAccessibleAsync();
        await visitor.SignAsync("Sign");
        await visitor.SeesAsync("signed, rejected");
        await visitor.SeesAsync("on hold");
        await visitor.SeesAsync("line at the toe, 0.3 mm at J2, 40°, like a crack");
        var own = await visitor
            .Page.GetByRole(AriaRole.Link, new() { Name = "Visual examination (PDF)" })
            .GetAttributeAsync("href");
        var report = PdfText.Letters(PdfText.Of(await visitor.DownloadAsync(own!)));
        Assert.Contains("Visualexaminationreport", report, StringComparison.Ordinal);
        Assert.Contains("lineatthetoe", report, StringComparison.Ordinal);
        Assert.Contains("theinsidewhichtheendsclose", report, StringComparison.Ordinal);
        var paper = PdfText.Letters(
            PdfText.Of(await visitor.DownloadAsync("/vessels/NR10-0024/certificate.pdf"))
        );
        Assert.Contains("Notexaminedtheinside", paper, StringComparison.Ordinal);
        Assert.Contains("Light800lx", paper, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Finding_OfAnInterruptedRun_HoldsTheVesselUntilItIsDecided()
    {
        await using var operatorVisitor = await Visitor.SignInAsync(site, DemoPeople.Operator, 820);
        await operatorVisitor.GoToAsync("/vessels/NR10-0008/weld/20");
        await operatorVisitor.SeesAsync("Open findings hold the vessel");
        var start = operatorVisitor.Page.GetByRole(AriaRole.Button, new() { Name = "Start run" });
        Assert.True(await start.IsDisabledAsync());

        await using var visitor = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await visitor.GoToAsync("/findings");
        await visitor
            .Page.Locator("tr", new() { HasText = "NR10-0008" })
            .GetByRole(AriaRole.Link)
            .First.ClickAsync();
        await visitor.PressAsync("Sign the decision");
        await visitor.SeesAsync("Nothing was decided");

        await visitor.Page.GetByLabel("rework", new() { Exact = true }).CheckAsync();
        await visitor.FillAsync(
            "Reason",
            "Stopped by an alarm; the pass is welded again over its whole length."
        );
        await visitor.SignAsync("Sign the decision");

        await visitor.SeesAsync("What you verified");
        await visitor.FindsAccessibleAsync();
    }

    [Fact]
    public async Task Vessel_WithEveryStepDone_IsAcceptedAndShippedBySecondPerson()
    {
        await using var inspector = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        await inspector.GoToAsync("/vessels/NR10-0002/sign-off/110");
        await inspector.NameAsync();
        await inspector.FillAsync("Your password", "not the password at all");
        await inspector.PressAsync("Sign");
        await inspector.SeesAsync("Your password is not right; nothing was signed.");
        await inspector.SignAsync("Sign");
        await inspector.SeesAsync("accepted");

        await using var quality = await Visitor.SignInAsync(site, DemoPeople.QualityManager);
        await quality.GoToAsync("/vessels/NR10-0002/ship");
        await quality.FindsAccessibleAsync();
        await quality.FillAsync("Who receives it, and where", "Float store, Lisbon, quay 4");
        await quality.FillAsync("Delivery note or waybill", "DN-0412");
        await quality.SignAsync("Sign and ship");
        await quality.SeesAsync("shipped");
        await quality.SeesAsync("Float store, Lisbon, quay 4");
    }

    private static ILocator Reading(Visitor visitor, int number, string what) =>
        visitor.Page.GetByLabel(
            string.Create(CultureInfo.InvariantCulture, $"Reading {number}: {what}")
        );

    private static async Task FillReadingAsync(
        Visitor visitor,
        int number,
        string seconds,
        string bar,
        string celsius
    )
    {
        await Reading(visitor, number, "time in s").FillAsync(seconds);
        await Reading(visitor, number, "gauge pressure in bar").FillAsync(bar);
        await Reading(visitor, number, "temperature in °C").FillAsync(celsius);
    }

    private static async Task BeginAsync(Visitor visitor)
    {
        await FillAsync(visitor, "Gauge", "G-31");
        await FillAsync(visitor, "Thermometer", "TH-3");
        await FillAsync(visitor, "Measured with", "MS-04");
        await visitor.FillAsync("Standard uncertainty of a gauge reading", "0.05");
        await visitor.FillAsync("Standard uncertainty of a temperature", "0.1");
        await visitor.FillAsync("Barometer", "1012");
        await visitor.FillAsync(
            "Dimension measured before and after",
            "outer diameter at mid-length"
        );
        await visitor.FillAsync("Its value before the test", "170.02");
        var further = visitor.Page.GetByText("Further places, with the same instrument and unit");
        if (!await visitor.Page.GetByLabel("Place 2: value before").IsVisibleAsync())
        {
            await further.ClickAsync();
        }

        await FillAsync(visitor, "Place 2", "outer diameter beside J2");
        await FillAsync(visitor, "Place 2: value before", "170.06");
        await visitor.FillAsync("Standard uncertainty of one measurement", "0.005");
        await visitor.SignAsync("Begin the test");
    }

    private static async Task HoldAsync(Visitor visitor, string start, string end)
    {
        await visitor.FillAsync("Gauge pressure at the start of the hold", start);
        await visitor.FillAsync("Temperature at the start", "18.4");
        await visitor.FillAsync("Gauge pressure at the end of the hold", end);
        await visitor.FillAsync("Temperature at the end", "18.4");
        await visitor.FillAsync("Time held", "620");
    }

    private static Task FillAsync(Visitor visitor, string label, string value) =>
        visitor
            .Page.GetByLabel(new Regex("^" + Regex.Escape(label) + @"( \(may be left empty\))?$"))
            .FillAsync(value);

    /// <summary>Where the step that comes next is done, as the vessel's page links to it.</summary>
    private static async Task<string?> NextStepAsync(Visitor visitor) =>
        await visitor
            .Page.Locator("a.button.next[href*='/steps/']")
            .First.GetAttributeAsync("href");
}
