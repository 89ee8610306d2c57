using Bunit;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Drawings;

namespace WeldTrace.Web.Tests.Components.Drawings;

public sealed class LadderDrawingTests : ComponentTest
{
    private static readonly PressureLadderPlot Plot = new()
    {
        Stages =
        [
            new("Half", Pressure.FromBar(100), Minutes(0), Minutes(2), Minutes(4)),
            new("Proof", Pressure.FromBar(200), Minutes(4), Minutes(6), Minutes(10)),
        ],
        Readings = [new(Minutes(7), Pressure.FromBar(199))],
        Levels = [new("MEOP", Pressure.FromBar(133))],
    };

    private static TimeSpan Minutes(double value) => TimeSpan.FromMinutes(value);

    [Fact]
    public void Render_Plot_DrawsStagesReadingsAndLevels()
    {
        var page = Render<LadderDrawing>(p => p.Add(c => c.Plot, Plot));

        Assert.Equal(["Half", "Proof"], page.FindAll("text.stage").Select(t => t.TextContent));
        Assert.Single(page.FindAll("circle.reading"));
        Assert.Equal("MEOP", page.Find("text.level-name").TextContent);
    }

    [Fact]
    public void Render_Table_SaysTheSameInFigures()
    {
        var cells = Render<LadderDrawing>(p => p.Add(c => c.Plot, Plot))
            .FindAll("tbody tr")[1]
            .TextContent;

        Assert.Contains("Proof", cells, StringComparison.Ordinal);
        Assert.Contains("200.0\u00a0bar", cells, StringComparison.Ordinal);
        Assert.Contains("6.0\u00a0min", cells, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_Axis_IsInTheUnitOfTheSite() =>
        Assert.Contains(
            "gauge pressure in psi",
            Render<LadderDrawing>(p =>
                p.Add(c => c.Plot, Plot).AddCascadingValue(UnitSystem.InchPound)
            ).Markup,
            StringComparison.Ordinal
        );

    [Fact]
    public void Planned_Stages_JoinFromZeroThroughEachHold()
    {
        var chart = new LadderChart(Plot, UnitSystem.Metric);

        Assert.Equal(
            6,
            chart.Planned.Split(['M', 'L'], StringSplitOptions.RemoveEmptyEntries).Length
        );
        Assert.StartsWith("M52 286", chart.Planned, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_NoStages_DrawsAxesOnly() =>
        Assert.Empty(
            Render<LadderDrawing>(p => p.Add(c => c.Plot, new PressureLadderPlot { Stages = [] }))
                .FindAll(".hold")
        );
}
