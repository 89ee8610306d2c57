using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Web.Features.Desk;
using WeldTrace.Web.Features.Desk.LeakPlanning;
using WeldTrace.Web.Features.Desk.Overview;
using WeldTrace.Web.Features.Desk.PassLayout;
using WeldTrace.Web.Features.Desk.Samples;
using WeldTrace.Web.Features.Desk.TestSafety;
using WeldTrace.Web.Features.Desk.ToolLives;
using WeldTrace.Web.Features.Desk.VesselSizing;
using WeldTrace.Web.Features.Desk.Windows;
using WeldTrace.Web.Features.Desk.WorkedOut;
using WeldTrace.Web.Tests.Components;

namespace WeldTrace.Web.Tests.Features.Desk;

/// <summary>Each page shows its example at once, says at each field what is wrong, and leads to the working and the printed sheet.</summary>
public sealed class DeskPageTests : ComponentTest
{
    public DeskPageTests() => Services.AddDesk();

    public static TheoryData<string, string, string> Pages =>
        new()
        {
            { Routes.DeskPassLayout, "Metres charged to the tool", ".plan" },
            { Routes.DeskWindow, "Weld pitch at the set point", ".plot" },
            { Routes.DeskVessel, "Least burst pressure", ".ladder" },
            { Routes.DeskLeak, "Detection limit of the planned hold", ".plot" },
            { Routes.DeskSafety, "Distance of people, at least", "table" },
            { Routes.DeskToolLife, "Mean further life", ".plot" },
            { Routes.DeskSample, "Tests without failure", "table" },
        };

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_Example_ShowsResultDrawingWorkingAndPrint(
        string path,
        string figure,
        string drawing
    )
    {
        var page = Open(path);

        Assert.Empty(page.FindAll("[data-error-summary]"));
        Assert.Contains(
            figure,
            page.Find("#result").ParentElement!.TextContent,
            StringComparison.Ordinal
        );
        Assert.NotEmpty(page.FindAll($"main {drawing}, {drawing}"));
        Assert.NotEmpty(page.FindAll("details.working .formula"));
        Assert.NotEmpty(page.FindAll(".caution p"));
        Assert.Single(page.FindAll($"a[href^='{path}/sheet.pdf?']"));
        Assert.Single(page.FindAll($"a[href^='{path}/worked-out?']"));
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Page_EmptyFields_SaysAtEachWhatIsMissing(string path, string figure, string drawing)
    {
        Assert.NotEmpty(figure + drawing);
        var subject = Subject(path);
        var fields = subject.Groups.SelectMany(g => g.Fields).ToList();
        var page = Open(path + "?" + string.Join('&', fields.Select(f => f.Name + "=")));

        Assert.Empty(page.FindAll("#result"));
        Assert.All(
            fields
                .Where(f => f is { Optional: false, Kind: Web.Components.Forms.FieldKind.Number })
                .Where(f => !f.Name.EndsWith('2')),
            f => Assert.Single(page.FindAll($"#{f.Name}-error"))
        );
    }

    [Theory]
    [InlineData(Routes.DeskPassLayout, "pin", "20", "not smaller than the shoulder diameter")]
    [InlineData(Routes.DeskPassLayout, "radius1", "0", "above zero")]
    [InlineData(Routes.DeskPassLayout, "radius2", "60", "larger radius")]
    [InlineData(Routes.DeskPassLayout, "speed2", "-3", "above zero")]
    [InlineData(Routes.DeskPassLayout, "dwell", "-1", "zero or more")]
    [InlineData(Routes.DeskWindow, "spindle", "2000", "outside its limits")]
    [InlineData(Routes.DeskWindow, "alloy", "cheese", "choose one from the list")]
    [InlineData(Routes.DeskVessel, "burst", "1.2", "not above the proof factor")]
    [InlineData(Routes.DeskVessel, "source", "", "missing")]
    [InlineData(Routes.DeskVessel, "meop", "6e8", "outside diameter")]
    [InlineData(Routes.DeskVessel, "yield", "900", "above the ultimate strength")]
    [InlineData(Routes.DeskLeak, "rate", "-1", "above zero")]
    [InlineData(Routes.DeskLeak, "temperature", "-300", "not possible")]
    [InlineData(Routes.DeskLeak, "hold", "NaN", "no number")]
    [InlineData(Routes.DeskSafety, "gauge", "1e12", "no sensible size")]
    [InlineData(Routes.DeskSafety, "wall", "0", "outer radius")]
    [InlineData(Routes.DeskToolLife, "tools", "412 faild", "line 1: '412 faild'")]
    [InlineData(Routes.DeskToolLife, "tools", "", "none is given")]
    [InlineData(Routes.DeskToolLife, "passes", "1.5", "whole number")]
    [InlineData(Routes.DeskSample, "content", "100", "enter 50 to 99.99 %")]
    [InlineData(Routes.DeskSample, "values", "12 x", "'x' is no number")]
    [InlineData(Routes.DeskSample, "values", "12", "2 to 500")]
    public void Page_BadField_SaysSoAtTheFieldAndKeepsWhatWasTyped(
        string path,
        string field,
        string typed,
        string words
    )
    {
        var page = Open(With(path, field, typed));

        Assert.Empty(page.FindAll("#result"));
        Assert.Contains(words, page.Find($"#{field}-error").TextContent, StringComparison.Ordinal);
        var control = page.Find($"#{field}");
        if (control.LocalName == "input")
        {
            Assert.Equal(typed, control.GetAttribute("value") ?? "");
        }
    }

    [Fact]
    public void Page_InOtherUnits_ShowsTheSameVessel()
    {
        var metric = DeskSheet.Read(Subject(Routes.DeskVessel), "", UnitSystem.Metric);
        var inch = DeskSheet.Read(
            Subject(Routes.DeskVessel),
            metric.InOtherUnits().Split('?')[1],
            UnitSystem.Metric
        );

        // 60 bar are 870.226 psi (NIST SP 811: 1 psi = 6894.757 Pa).
        Assert.Equal("870.2264", inch.Typed["meop"]);
        Assert.Equal(
            metric.Calculation!.Workings[0].Results[0].Value,
            inch.Calculation!.Workings[0].Results[0].Value,
            1e-4
        );
        Assert.Contains("psi", inch.Calculation.Figures[0].Value, StringComparison.Ordinal);
    }

    [Fact]
    public void ToolLife_NoFailure_GivesTheBoundOfAnAssumedShape()
    {
        var sheet = DeskSheet.Read(
            Subject(Routes.DeskToolLife),
            With(Routes.DeskToolLife, "tools", "500 in use\n700 in use").Split('?')[1],
            UnitSystem.Metric
        );

        // sqrt(2·(500² + 700²)/χ²(0.95; 2)), χ²(0.95; 2) = −2·ln 0.05 = 5.99146.
        Assert.Equal(
            Math.Sqrt(2 * ((500.0 * 500) + (700.0 * 700)) / 5.991464547),
            sheet.Calculation!.Workings[0].Results[0].Value,
            1e-4
        );
        Assert.Contains(
            "at least two failures",
            sheet.Calculation.Statements[0],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void WorkedOut_Example_ShowsEveryWorkingOpen()
    {
        var sheet = DeskSheet.Read(Subject(Routes.DeskLeak), "", UnitSystem.Metric);
        Services
            .GetRequiredService<NavigationManager>()
            .NavigateTo(sheet.At("/desk/leak-test/worked-out"));

        var page = RenderWorkedOut("leak-test");

        Assert.Equal(
            sheet.Calculation!.Workings.Select(w => w.Title).Prepend("Entered"),
            page.FindAll("h2").Select(h => h.TextContent)
        );
        Assert.NotEmpty(page.FindAll("math mfrac"));
    }

    [Fact]
    public void WorkedOut_NoSuchCalculation_SaysSo() =>
        Assert.Contains(
            "No such calculation",
            RenderWorkedOut("nothing").Markup,
            StringComparison.Ordinal
        );

    [Fact]
    public void Overview_Desk_LinksToEachPage() =>
        Assert.Equal(
            Pages.Select(row => row.Data.Item1),
            Render<DeskOverview>().FindAll("dt a").Select(a => a.GetAttribute("href"))
        );

    private IRenderedComponent<IComponent> Open(string address)
    {
        Services.GetRequiredService<NavigationManager>().NavigateTo(address);
        return address.Split('?')[0] switch
        {
            Routes.DeskPassLayout => Render<PassLayoutDesk>(),
            Routes.DeskWindow => Render<WindowDesk>(),
            Routes.DeskVessel => Render<VesselDesk>(),
            Routes.DeskLeak => Render<LeakDesk>(),
            Routes.DeskSafety => Render<SafetyDesk>(),
            Routes.DeskToolLife => Render<ToolLifeDesk>(),
            _ => Render<SampleDesk>(),
        };
    }

    private IRenderedComponent<WorkedOut> RenderWorkedOut(string name) =>
        Render<WorkedOut>(p => p.Add(c => c.Name, name).Add(c => c.Http, new DefaultHttpContext()));

    /// <summary>The example with one field changed.</summary>
    private string With(string path, string field, string typed)
    {
        var sheet = DeskSheet.Read(Subject(path), "", UnitSystem.Metric);
        var values = sheet.Typed.ToDictionary(t => t.Key, t => t.Key == field ? typed : t.Value);
        return path
            + "?units=Metric&"
            + string.Join('&', values.Select(v => $"{v.Key}={Uri.EscapeDataString(v.Value)}"));
    }

    private IDeskSubject Subject(string path) =>
        Services.GetServices<IDeskSubject>().Single(s => s.Path == path);
}
