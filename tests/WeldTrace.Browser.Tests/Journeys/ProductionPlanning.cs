using System.Globalization;
using Microsoft.Playwright;
using WeldTrace.Web.Demo;

namespace WeldTrace.Browser.Tests.Journeys;

/// <summary>A design takes a released procedure up, and a vessel is planned to it.</summary>
internal static class ProductionPlanning
{
    private const string Serial = "NR10-0301";

    /// <summary>Plans the vessel through the pages and says what the page of its first weld tells about the procedure.</summary>
    public static async Task<string> PlanAsync(
        OwnWorkshop workshop,
        Visitor engineer,
        Visitor quality,
        string procedure
    )
    {
        await EnterShellAsync(engineer, workshop.Clock.Today);
        await DrawAsync(engineer, procedure);
        await quality.GoToAsync(new Uri(engineer.Page.Url).AbsolutePath);
        await quality.SignForGoodAsync("Sign and release");

        await engineer.GoToAsync("/vessels/new");
        await engineer.FillAsync("Serial number", Serial);
        await ChooseWithAsync(engineer, "Design", "NR-10 rev B");
        // The revision that it supersedes is offered no more.
        Assert.Equal(0, await Offers(engineer, "NR-10 rev A").CountAsync());
        await engineer.FillAsync("Production lot", "PL-26-09");
        await engineer.Page.Locator("[name='In.Components[0].Serial']").FillAsync("S-0301");
        await engineer.PressAsync("Plan the vessel");
        await engineer.SeesAsync("Clean, fit up and clamp");

        await using var welder = await workshop.SignInAsync(DemoPeople.Operator, 820);
        await welder.GoToAsync($"/vessels/{Serial}/weld/20");
        await welder.SeesAsync("Rules before this run");
        return await welder.Page.Locator("#rule-F2").InnerTextAsync();
    }

    private static async Task EnterShellAsync(Visitor engineer, DateOnly today)
    {
        await engineer.GoToAsync("/equipment/components/new");
        await engineer.FillAsync("Serials", "S-0301");
        await engineer.FillAsync("What they are", "shell");
        await ChooseWithAsync(engineer, "Lot they were cut from", "L-2611");
        await engineer.FillAsync("Made by", "Float works");
        await engineer.FillAsync(
            "Made on",
            today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
        );
        await engineer.PressAsync("Enter them");
        await engineer.Page.ArrivesAtAsync("**/equipment/components");
    }

    private static async Task DrawAsync(Visitor engineer, string procedure)
    {
        await engineer.GoToAsync("/designs");
        await engineer.FollowAsync("NR-10 rev A");
        await engineer.FillAsync("Why", "Lower end butt welded to the shell");
        await engineer.PressAsync("Make the next revision");
        await engineer.Page.ArrivesAtAsync("**/designs/*/edit");
        await engineer.Page.Locator("[name='In.Joints[0].JointType']").FillAsync("butt");
        await engineer.Page.Locator("[name='In.Joints[0].ProcedureNumber']").FillAsync(procedure);
        await engineer.PressAsync("Save the draft");
        await engineer.SeesAsync("Sign and release");
    }

    private static async Task ChooseWithAsync(Visitor visitor, string label, string words) =>
        await visitor.ChooseAsync(
            label,
            (await Offers(visitor, words).First.GetAttributeAsync("value"))!
        );

    private static ILocator Offers(Visitor visitor, string words) =>
        visitor.Page.Locator("select option", new() { HasText = words });
}
