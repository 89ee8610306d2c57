using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>Each kind of test at the bench, from the reading to the paper; every reading is invented.</summary>
public sealed class BenchJourneyTests(SiteFixture shared)
{
    [Fact]
    public async Task Leak_ByLogger_ByBubbles_AndByTracerGas_EachHasItsPaper()
    {
        await using var workshop = await OwnWorkshop.OpenAsync(shared);
        await using var visitor = await workshop.SignInAsync(DemoPeople.Inspector);

        await visitor.GoToAsync("/vessels/NR10-0004/leak/80");
        await visitor.SeesAsync("Stored energy");
        await CommonAsync(visitor);
        await BenchEntering.FillAsync(visitor, "Thermometer", "TH-3");
        await BenchEntering.HandInAsync(
            visitor,
            "Or: log of the test",
            "decay.csv",
            "text/csv",
            BenchEntering.Log(3601, 1, t => 10.05 - (t * 1e-8), _ => 20.1)
        );
        await visitor.FillAsync("Standard uncertainty of a gauge reading", "0.2");
        await visitor.FillAsync("Standard uncertainty of a temperature", "0.02");
        await visitor.FillAsync("Standard uncertainty of the volume", "0.5");
        await visitor.SignAsync("Record and compute");
        await visitor.SeesAsync("3601 samples");
        await visitor.FindsAccessibleAsync();
        var decay = await visitor.PaperAsync();
        Assert.Contains("This test is not signed yet", decay, StringComparison.Ordinal);
        Assert.Contains("decay.csv", decay, StringComparison.Ordinal);
        await WithdrawAsync(visitor);

        await visitor.GoToAsync("/vessels/NR10-0004/leak/80?method=bubbles");
        await CommonAsync(visitor);
        await BenchEntering.FillAsync(visitor, "Gauge pressure", "10.05");
        await visitor.FillAsync("Liquid", "water");
        await visitor.FillAsync("Depth of the seam below the surface", "100");
        await visitor.FillAsync("Observed for", "1800");
        await visitor.FillAsync("Bubbles counted", "2");
        await visitor.FillAsync("Diameter of a bubble", "2");
        await visitor.ChooseAsync("Place 1: weld", "J2");
        await BenchEntering.FillAsync(visitor, "Place 1: angle", "135");
        await visitor.SignAsync("Record and compute");
        await visitor.SeesAsync("Leak test by immersion and bubbles");
        await visitor.FindsAccessibleAsync();
        var bubbles = await visitor.PaperAsync();
        Assert.Contains("Places on the vessel", bubbles, StringComparison.Ordinal);
        await WithdrawAsync(visitor);

        await visitor.GoToAsync("/vessels/NR10-0004/leak/80?method=tracer");
        await BenchEntering.FillAsync(visitor, "Gauge", "G-12");
        await TracerAsync(visitor);
        await visitor.FillAsync("Dwell under test gas", "60");
        await visitor.SignAsync("Record and compute");
        await visitor.SeesAsync("the design asks for 1800 s at least");
        Assert.Equal(
            "true",
            await visitor
                .Page.GetByLabel("Dwell under test gas", new() { Exact = true })
                .GetAttributeAsync("aria-invalid")
        );
        await visitor.FillAsync("Dwell under test gas", "1800");
        await visitor.SignAsync("Record and compute");
        await visitor.SeesAsync("Leak test by tracer gas");
        await visitor.FindsAccessibleAsync();
        await visitor.SignForGoodAsync("Sign");
        var tracer = await visitor.PaperAsync();
        Assert.Contains("Leak test certificate", tracer, StringComparison.Ordinal);
        Assert.Contains("LD-02", tracer, StringComparison.Ordinal);
        Assert.DoesNotContain("Not a certificate", tracer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sample_LeavesItsPlan_IsDecided_BurstsAndIsExpended()
    {
        await using var workshop = await OwnWorkshop.OpenAsync(shared);
        await using var visitor = await workshop.SignInAsync(DemoPeople.Inspector);
        await visitor.GoToAsync("/vessels/NR10-0003/pressure/90");
        await visitor.SeesAsync("Stored energy there");
        await BenchEntering.BeginByStrainAsync(visitor);
        await visitor.SeesAsync("Stage 1 of 4");
        await visitor.FindsAccessibleAsync();

        // Up to 41.2 bar, above the stage's 40.8 bar: the test stands.
        await BenchEntering.HandInAsync(
            visitor,
            "Or: pressure log of this stage",
            "hold.csv",
            "text/csv",
            BenchEntering.Log(900, 1, t => t < 240 ? t * 41.2 / 240 : 41.2, _ => 18.4)
        );
        await visitor.PressAsync("Record stage 1");
        await visitor.SeesAsync("The test stands");
        await visitor.FindsAccessibleAsync();
        await visitor.FollowAsync("page of this test");
        var test = new Uri(visitor.Page.Url).AbsolutePath;

        await using var engineer = await workshop.SignInAsync(DemoPeople.Engineer);
        await engineer.GoToAsync(test);
        await engineer.ChooseAsync("What follows", "on");
        await engineer.FillAsync(
            "Reason",
            "The pump overshot; 41.2 bar stays below the proof pressure."
        );
        await engineer.FindsAccessibleAsync();
        await engineer.SignForGoodAsync("Sign the decision");
        await engineer.SeesAsync("The test went on");

        await visitor.GoToAsync("/vessels/NR10-0003/pressure/90");
        await visitor.FillAsync("gauge R1 round the shell after the return to zero", "61");
        await visitor.PressAsync("Record stage 2");
        await visitor.SeesAsync("Stage 3 of 4");
        await BenchEntering.HoldAsync(visitor, "60.40", "60.10");
        await visitor.PressAsync("Record stage 3");
        await visitor.SeesAsync("Stage 4 of 4");
        await visitor.FindsAccessibleAsync();
        await visitor.ChooseAsync("Joint nearest to it", "J1");
        await visitor.FillAsync(
            "How the crack ran, relative to the zones of the weld",
            "from the heat-affected zone of J1 along the shell, 120 mm"
        );
        await BenchEntering.HandInAsync(
            visitor,
            "Photograph of the origin",
            "burst.jpg",
            "image/jpeg",
            DemoMacro.Make("NR10-0003").Attachment.Bytes
        );
        await BenchEntering.HandInAsync(
            visitor,
            "Or: pressure log of this stage",
            "burst.csv",
            "text/csv",
            BenchEntering.Log(400, 1, t => t < 380 ? t * 95 / 380 : 0, _ => 18.4)
        );
        await visitor.PressAsync("Record stage 4");
        await visitor.FollowAsync("Look at the test and sign it");
        await visitor.SeesAsync("Times the operating pressure");
        await visitor.FindsAccessibleAsync();
        await visitor.SignForGoodAsync("Sign");

        var paper = await visitor.PaperAsync();
        Assert.Contains("Burst test report", paper, StringComparison.Ordinal);
        Assert.Contains("decided by", paper, StringComparison.Ordinal);
        Assert.Contains("120 mm", paper, StringComparison.Ordinal);
        Assert.Contains("gauge R1 round the shell", paper, StringComparison.Ordinal);
        await visitor.GoToAsync("/vessels/NR10-0003");
        await visitor.SeesAsync("expended");
    }

    private static async Task CommonAsync(Visitor visitor)
    {
        await visitor.FillAsync("Barometer", "1012");
        await BenchEntering.FillAsync(visitor, "Gauge", "G-12");
        await visitor.Page.GetByLabel("I have read the cautions above").CheckAsync();
    }

    private static async Task TracerAsync(Visitor visitor)
    {
        await visitor.Page.GetByLabel("I have read the cautions above").CheckAsync();
        await visitor.FillAsync("Tracer gas", "helium");
        await BenchEntering.FillAsync(visitor, "Share of tracer gas", "20");
        await visitor.FillAsync("Standard uncertainty of the share", "0.5");
        await BenchEntering.FillAsync(visitor, "Gauge pressure", "10.05");
        await visitor.FillAsync("Dwell under test gas", "1800");
        await BenchEntering.FillAsync(visitor, "Calibrated leak", "LD-02");
        await BenchEntering.FillAsync(visitor, "Its rate", "0.000012");
        await visitor.FillAsync("Standard uncertainty of its rate", "0.0000004");
        await visitor.FillAsync("With the calibrated leak open", "1250");
        await BenchEntering.FillAsync(visitor, "Background", "48");
        await visitor.FillAsync("On the vessel, greatest", "55");
        await visitor.FillAsync("Standard uncertainty of a signal", "4");
    }

    private static async Task WithdrawAsync(Visitor visitor)
    {
        await visitor.Page.GetByText("Entered wrongly? Withdraw this test").ClickAsync();
        await visitor.FillAsync("What was entered wrongly", "Another method was asked for");
        await visitor.SignForGoodAsync("Withdraw the test");
    }
}
