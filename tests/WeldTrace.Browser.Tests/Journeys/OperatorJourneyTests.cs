using System.Text;
using Microsoft.Playwright;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>The operator at the machine, on a tablet's width.</summary>
public sealed class OperatorJourneyTests(SiteFixture site)
{
    private const int TabletWidth = 820;

    [Fact]
    public async Task Run_ByKeyboardOnly_IsStartedEndedJudgedAndSigned()
    {
        await using var visitor = await OperatorAsync();
        var (page, keyboard) = (visitor.Page, new Keyboard(visitor.Page));
        await visitor.GoToAsync("/");
        await keyboard.PressAsync("NR10-0007");
        await visitor.SeesAsync("Rules before this run");
        await SeesEveryRuleAsync(page);

        await StartAsync(visitor, keyboard, "T-0142", "counter-clockwise");
        await visitor.FindsAccessibleAsync();
        await keyboard.PressAsync("End run");
        await page.ArrivesAtAsync("**/runs/*/log");
        await visitor.SeesAsync("Bring the process log");
        await visitor.FindsAccessibleAsync();
        await BringAsync(keyboard, "pass-1.csv", Log(Excursion));
        await visitor.SeesAsync("Columns as remembered for");
        await visitor.FindsAccessibleAsync();
        await keyboard.PressAsync("Judge and keep the log");
        await visitor.SeesAsync("those that overlap opened one finding");
        await visitor.SeesAsync("Findings that hold the vessel");
        await visitor.FindsAccessibleAsync();
        await keyboard.TypeAsync("Your sign-in name", DemoPeople.Operator.SignInName);
        await keyboard.TypeAsync("Your password", DemoPeople.Password);
        await page.Keyboard.PressAsync("Enter");
        await page.LeavesAsync("**/sign");

        await visitor.GoToAsync("/vessels/NR10-0007");
        await visitor.SeesAsync("on hold");
        await visitor.SeesAsync("I welded this run as recorded here.");
        await visitor.GoToAsync("/tools");
        await visitor.FollowAsync("T-0142");
        await visitor.SeesAsync("0.411");
    }

    [Fact]
    public async Task Run_StoppedHalfway_ChargesWhatItTravelledAndHoldsTheJoint()
    {
        await using var visitor = await OperatorAsync();
        var (page, keyboard) = (visitor.Page, new Keyboard(visitor.Page));
        await visitor.GoToAsync("/vessels/NR10-0006/weld/40");
        await StartAsync(visitor, keyboard, "T-0141", "counter-clockwise");
        await keyboard.PressAsync("Record an interrupted run");
        await visitor.SeesAsync("Length travelled along the seam");
        await visitor.FindsAccessibleAsync();

        await keyboard.TypeAsync("Length travelled along the seam", "4000");
        await keyboard.TypeAsync("What happened", "Spindle alarm, stopped by hand");
        await keyboard.PressAsync("Record the interruption");
        await page.Locator("[data-error-summary]").WaitForAsync();
        await keyboard.TypeAsync("Length travelled along the seam", "180");
        await keyboard.PressAsync("Record the interruption");
        await page.ArrivesAtAsync("**/runs/*/log");

        await BringAsync(keyboard, "report.csv", "%PDF-1.7 not a log"u8.ToArray());
        await visitor.SeesAsync("Bring another file");
        await visitor.GoToAsync("/vessels/NR10-0006/weld/40");
        await visitor.SeesAsync("interrupted");
        await visitor.GoToAsync("/tools");
        await visitor.FollowAsync("T-0141");
        await visitor.SeesAsync("operator's statement, until the log is in");
        await visitor.GoToAsync("/vessels/NR10-0006");
        await visitor.SeesAsync("on hold");
    }

    /// <summary>A scanner types with no field in focus, key after key as fast as it can: no key of the code is lost.</summary>
    [Fact]
    public async Task Scan_WithNoFieldInFocus_FillsTheFirstFieldWhole()
    {
        await using var visitor = await OperatorAsync();
        await visitor.GoToAsync("/vessels/NR10-0009/weld/20");
        // The scripts of the page are there once the field for the tool has been given the focus.
        await visitor.Page.WaitForFunctionAsync(
            "() => document.activeElement.hasAttribute('data-scan-first')"
        );

        await visitor.Page.EvaluateAsync(
            """
            () => {
              document.activeElement.blur();
              for (const key of 'Ga') {
                document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
              }
            }
            """
        );

        Assert.Equal(
            "Ga",
            await visitor.Page.GetByLabel("Machine", new() { Exact = true }).InputValueAsync()
        );
    }

    [Fact]
    public async Task Vessel_OfANonexistentSerial_SaysSo()
    {
        await using var visitor = await OperatorAsync();

        var response = await visitor.GoToAsync("/vessels/" + Uri.EscapeDataString("<b>NR10-9999"));

        Assert.Equal(404, response!.Status);
        await visitor.SeesAsync("Nothing at this address");
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/vessels/NR10-0009/sign-off/10")]
    [InlineData("/vessels/NR10-0008/weld/20")]
    [InlineData("/tools")]
    public async Task Page_OnATabletOrAPhone_IsNeverWiderThanTheScreen(string path)
    {
        await using var visitor = await OperatorAsync();
        foreach (var width in new[] { TabletWidth, 320 })
        {
            await visitor.Page.SetViewportSizeAsync(width, 1000);
            await visitor.GoToAsync(path);

            var scrolled = await visitor.Page.EvaluateAsync<int>(
                "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"
            );
            Assert.True(scrolled <= 0, $"{path} is {scrolled} px wider than {width} px.");
        }
    }

    private async Task<Visitor> OperatorAsync() =>
        await Visitor.SignInAsync(site, DemoPeople.Operator, TabletWidth);

    // Each rule is a word, a shape, a reason with the records behind it, and a source.
    private static async Task SeesEveryRuleAsync(IPage page)
    {
        for (var rule = 1; rule <= 9; rule++)
        {
            var line = page.Locator($"#rule-F{rule}");
            await line.Locator("svg").First.WaitForAsync();
            Assert.Matches("Holds|Forbids", await line.InnerTextAsync());
            Assert.True(rule == 9 || await line.Locator(".rule-links a").CountAsync() > 0);
        }
    }

    private static async Task StartAsync(
        Visitor visitor,
        Keyboard keyboard,
        string tool,
        string travel
    )
    {
        await keyboard.TypeAsync("Machine", "Gantry 1");
        await keyboard.TypeAsync("Tool mark", tool);
        await keyboard.PressAsync("Judge with these");
        await visitor.SeesAsync($"{tool} is in service");
        string[] checks =
        [
            "Fit-up, jigging and tacking",
            "Parameters set as in the procedure",
            "Preheat and interpass temperature",
        ];
        foreach (var check in checks)
        {
            await keyboard.PressAsync(check, "Space");
        }

        await keyboard.ReachAsync("clockwise");
        if (travel != "clockwise")
        {
            await visitor.Page.Keyboard.PressAsync("ArrowDown");
        }
        else
        {
            await visitor.Page.Keyboard.PressAsync("Space");
        }

        await keyboard.PressAsync("Start run");
        await visitor.Page.ArrivesAtAsync("**/runs/*/end");
    }

    private static async Task BringAsync(Keyboard keyboard, string name, byte[] log)
    {
        await keyboard.HandInAsync("Log of this run", name, "text/csv", log);
        await keyboard.PressAsync("Bring the log");
    }

    private static DemoExcursion Excursion { get; } =
        new(Angle.FromDegrees(200), Length.FromMillimetres(9), Force.FromKilonewtons(1.6));

    private static byte[] Log(DemoExcursion? excursion) =>
        Encoding.UTF8.GetBytes(
            new DemoLog(
                new DemoRun
                {
                    Overlap = Length.FromMillimetres(21.64),
                    PlungeDepth = Length.FromMillimetres(5.7),
                    SamplesPerSecond = 50,
                    Excursion = excursion,
                }
            ).ToCsv()
        );
}
