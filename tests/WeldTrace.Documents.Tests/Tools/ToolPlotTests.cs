using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Tests.Samples;
using Xunit;

namespace WeldTrace.Documents.Tests.Tools;

public sealed class ToolPlotTests
{
    /// <summary>The readings lie on the line 4.70 mm − 1 µm/m: at 40 m it stands at 4.66 mm, six tenths of the way from 4.60 to 4.70.</summary>
    [Theory]
    [InlineData(UnitSystem.Metric)]
    [InlineData(UnitSystem.InchPound)]
    public void Wear_ReadingsOnALine_LieOnTheDrawnTrend(UnitSystem units)
    {
        var plot = SampleTool.Wear(units);

        var limit = plot.Lines.Single(l => l.IsLimit).From.Up;
        var trend = plot.Lines.Single(l => !l.IsLimit);
        var drawn = plot.Points[0].Place.Up;
        Assert.Equal([0, 0.25, 0.5], plot.Points.Select(p => p.Place.Across), Near);
        Assert.Equal(plot.Points[0].Place.Up, trend.From.Up, 9);
        Assert.Equal(limit + (0.6 * (drawn - limit)), trend.To.Up, 9);
    }

    /// <summary>Without censoring before them the failures of 4 tools stand at 1/6, 1/2 and 5/6 of the 3 at risk; 63.2 % lies at the scale.</summary>
    [Fact]
    public void Failures_Places_RiseOnAStraightScale()
    {
        var plot = SampleTool.Failures(UnitSystem.Metric);

        var failed = plot.Points.Where(p => p.Kind == PlotPointKind.Event).ToList();
        double Up(double part) => (Reduced(part) - Reduced(0.01)) / (Reduced(0.99) - Reduced(0.01));
        Assert.Equal([Up(1.0 / 6), Up(1.0 / 2), Up(5.0 / 6)], failed.Select(p => p.Place.Up), Near);
        Assert.Equal(0, plot.Points.Single(p => p.Kind == PlotPointKind.Open).Place.Up);
    }

    [Fact]
    public void Failures_Ticks_RiseAndStayWithin()
    {
        var plot = SampleTool.Failures(UnitSystem.Metric);

        foreach (var axis in new[] { plot.Across, plot.Up })
        {
            Assert.NotEmpty(axis.Ticks);
            Assert.All(axis.Ticks, t => Assert.InRange(t.At, -1e-9, 1 + 1e-9));
            Assert.Equal(axis.Ticks.OrderBy(t => t.At), axis.Ticks);
        }

        Assert.Equal(["10", "20", "50"], plot.Across.Ticks.Select(t => t.Text));
    }

    private static double Reduced(double part) => Math.Log(-Math.Log(1 - part));

    private static bool Near(double left, double right) => Math.Abs(left - right) < 1e-9;
}
