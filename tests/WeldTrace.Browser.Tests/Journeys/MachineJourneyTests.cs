using System.Globalization;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

public sealed class MachineJourneyTests(SiteFixture site)
{
    [Fact]
    public async Task Machine_ThatWasMoved_IsOpenedByThreeTestWeldsAndASignature()
    {
        await using var inspector = await Visitor.SignInAsync(site, DemoPeople.Inspector);
        for (var recorded = 0; recorded < 3; recorded++)
        {
            await inspector.GoToAsync("/equipment");
            await inspector.FollowAsync("Bench 2");
            await inspector.SeesAsync("needs reproducibility test");
            await inspector.FollowAsync("Record a test weld");
            await inspector.SeesAsync($"{recorded} of 3 satisfactory ones");
            await FillTestWeldAsync(inspector);
            await inspector.PressAsync("Record the test weld");
            await inspector.SeesAsync("History");
        }

        await using var engineer = await Visitor.SignInAsync(site, DemoPeople.Engineer);
        await engineer.GoToAsync(new Uri(inspector.Page.Url).AbsolutePath);
        await engineer.FillAsync("Why it may weld again", "Three sections without imperfection");
        await engineer.SignAsync("Sign and open");

        await engineer.SeesAsync("in use");
        await engineer.GoToAsync("/equipment");
        var row = engineer.Page.GetByRole(
            Microsoft.Playwright.AriaRole.Row,
            new() { Name = "Bench 2" }
        );
        Assert.Contains("in use", await row.InnerTextAsync(), StringComparison.Ordinal);
    }

    private static async Task FillTestWeldAsync(Visitor inspector)
    {
        var today = TimeProvider.System.GetUtcNow().AddDays(-1);
        await inspector
            .Page.GetByLabel("Procedure it was welded to")
            .SelectOptionAsync(new Microsoft.Playwright.SelectOptionValue { Index = 1 });
        await inspector.ChooseAsync("Welded by", DemoPeople.Operator.PrintedName);
        await inspector.ChooseAsync("Examined by", DemoPeople.Inspector.PrintedName);
        await inspector.ChooseAsync("Verdict", "satisfactory");
        await inspector.FillAsync(
            "Welded on",
            today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
        await inspector.FillAsync(
            "What was examined and found",
            "Bend and section: no imperfection"
        );
        await inspector
            .Page.GetByLabel("Record of the examination")
            .SetInputFilesAsync(
                new Microsoft.Playwright.FilePayload
                {
                    Name = "examination.pdf",
                    MimeType = "application/pdf",
                    Buffer = "%PDF-1.4\n%%EOF"u8.ToArray(),
                }
            );
    }
}
