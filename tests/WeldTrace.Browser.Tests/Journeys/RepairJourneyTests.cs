using System.Text;
using Microsoft.Playwright;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>A seam is found wanting after the proof test: the board and the quality manager decide, the operator welds the repair through the gate.</summary>
public sealed class RepairJourneyTests(SiteFixture shared)
{
    private const string Serial = "NR10-0002";
    private const double FromDegrees = 80;
    private const double ToDegrees = 110;

    [Fact]
    public async Task Repair_AfterTheProofTest_IsWeldedThroughTheGate_AndTheTestsComeBack()
    {
        // A vessel that nobody else accepts or ships meanwhile.
        await using var workshop = await OwnWorkshop.OpenAsync(shared);
        var finding = await ReportAsync(workshop);
        await DecideAsync(workshop, finding);
        await using var welder = await workshop.SignInAsync(DemoPeople.Operator, 820);
        await welder.GoToAsync("/");
        await PrepareAsync(welder);
        await StartAsync(welder, finding);
        await WeldAsync(welder);
        await welder.SeesAsync("attempt 1 at the place, from 80.0° along the travel");
        await welder.FindsAccessibleAsync();

        await welder.GoToAsync(finding);
        await welder.SeesAsync("Welded by WP-101 rev B");
        await welder.GoToAsync($"/vessels/{Serial}");
        await welder.SeesAsync("Repair weld, F-");
        Assert.Contains(
            "Visual examination",
            await welder.Page.Locator("body").InnerTextAsync(),
            StringComparison.Ordinal
        );
        var paper = PdfText.Letters(
            PdfText.Of(await welder.DownloadAsync($"/vessels/{Serial}/traveler.pdf"))
        );
        Assert.Contains("attempt1attheplacefrom800", paper, StringComparison.Ordinal);
    }

    private static async Task<string> ReportAsync(OwnWorkshop workshop)
    {
        await using var visitor = await workshop.SignInAsync(DemoPeople.Inspector);
        await visitor.GoToAsync($"/vessels/{Serial}/findings/new");
        await visitor.FillAsync("What was found", "Open cavity at the retreating edge, 2 mm.");
        await visitor.ChooseAsync("Joint", "J1");
        await visitor.Page.Locator("[name='In.PassNumber']").FillAsync("1");
        await visitor.Page.Locator("[name='In.Start']").FillAsync("90");
        await visitor.Page.Locator("[name='In.End']").FillAsync("96");
        await visitor.PressAsync("Report, and hold the vessel");
        await visitor.SeesAsync("joint J1, pass 1, 90.0° to 96.0°");
        return new Uri(visitor.Page.Url).AbsolutePath;
    }

    private static async Task DecideAsync(OwnWorkshop workshop, string finding)
    {
        await using var visitor = await workshop.SignInAsync(DemoPeople.QualityManager);
        await visitor.GoToAsync(finding);
        await ChooseRepairAsync(visitor);
        await visitor.SignAsync("Sign the decision");
        await visitor.SeesAsync("The material review board decides first");
        await visitor.FindsAccessibleAsync();

        await visitor.GoToAsync(finding);
        await visitor.Page.GetByText("Record a decision of the material review board").ClickAsync();
        await visitor.FillAsync("Number of the minutes", "MRB-26-11");
        await visitor.FillAsync("Members", "Design, quality, customer");
        await visitor.FillAsync("What was decided", "Repair once, and test everything anew.");
        await visitor.SignForGoodAsync("Sign the record");
        await visitor.GoToAsync(finding);
        await ChooseRepairAsync(visitor);
        await visitor.SignAsync("Sign the decision");
        await visitor.SeesAsync("Weld the repair");
        await visitor.FindsAccessibleAsync();
    }

    private static async Task ChooseRepairAsync(Visitor visitor)
    {
        await visitor.Page.GetByLabel("repair", new() { Exact = true }).CheckAsync();
        await visitor
            .Page.Locator("[name='In.Procedure']")
            .SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await visitor.Page.Locator("[name='In.Start']").FillAsync($"{FromDegrees}");
        await visitor.Page.Locator("[name='In.End']").FillAsync($"{ToDegrees}");
        await visitor.FillAsync("Reason", "One short repair weld over the cavity.");
    }

    private static async Task PrepareAsync(Visitor visitor)
    {
        await visitor.GoToAsync($"/vessels/{Serial}/prepare/J1");
        await visitor
            .Page.Locator("[name='Clean.Method']")
            .FillAsync("Brushed, wiped with acetone");
        await visitor.Page.Locator("[name='Clean.MinutesAgo']").FillAsync("5");
        await visitor.Page.Locator("[name='Clean.FixtureIsClean'][type=checkbox]").CheckAsync();
        await visitor
            .Page.Locator("form", new() { Has = visitor.Page.Locator("[name='Clean.Method']") })
            .GetByRole(AriaRole.Button)
            .Last.ClickAsync();
        await visitor.SeesAsync("acetone");
    }

    private static async Task StartAsync(Visitor visitor, string finding)
    {
        await visitor.GoToAsync(finding);
        await visitor.FollowAsync("See the rules, and weld");
        await visitor.SeesAsync("Repair decided, no open finding");
        await visitor.FindsAccessibleAsync();
        var start = visitor.Page.GetByRole(AriaRole.Button, new() { Name = "Start run" });
        Assert.True(await start.IsDisabledAsync());
        await visitor.FillAsync("Machine", "Gantry 1");
        await visitor.FillAsync("Tool mark", "T-0142");
        await visitor.PressAsync("Judge with these");
        await visitor.SeesAsync("T-0142 is in service");
        foreach (var check in new[] { "FitUp", "Parameters", "Preheat" })
        {
            await visitor.Page.Locator($"[name='In.{check}'][type=checkbox]").CheckAsync();
        }

        await visitor.Page.GetByLabel("counter-clockwise", new() { Exact = true }).CheckAsync();
        await start.ClickAsync();
        await visitor.Page.ArrivesAtAsync("**/runs/*/end");
    }

    private static async Task WeldAsync(Visitor visitor)
    {
        await visitor.FindsAccessibleAsync();
        await visitor.PressAsync("End run");
        await visitor.Page.ArrivesAtAsync("**/runs/*/log");
        await visitor
            .Page.GetByLabel("Log of this run")
            .SetInputFilesAsync(
                new FilePayload
                {
                    Name = "repair.csv",
                    MimeType = "text/csv",
                    Buffer = Log(),
                }
            );
        await visitor.PressAsync("Bring the log");
        await visitor.PressAsync("Judge and keep the log");
        await visitor.SeesAsync("no parameter left its window");
        await visitor.SignAsync("Sign the run");
        await visitor.Page.LeavesAsync("**/sign");
    }

    /// <summary>What the machine wrote over the 30° of the repair.</summary>
    private static byte[] Log()
    {
        var whole = new DemoRun();
        var repair = whole.TrackRadius * Angle.FromDegrees(ToDegrees - FromDegrees).Radians;
        return Encoding.UTF8.GetBytes(
            new DemoLog(
                whole with
                {
                    Overlap = repair - (whole.TrackRadius * (2 * Math.PI)),
                    PlungeDepth = Length.FromMillimetres(5.7),
                    SamplesPerSecond = 50,
                }
            ).ToCsv()
        );
    }
}
