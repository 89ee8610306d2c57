using System.Globalization;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.CalculationSheets;

/// <summary>The band of the peak temperature over a window of the spindle speed.</summary>
public static class HeatPlot
{
    private const int Steps = 12;
    private const double Room = 0.15;

    /// <summary>Lays the plot out, a little beyond both ends of the window.</summary>
    /// <param name="heat">Band at a spindle speed.</param>
    /// <param name="low">Lower limit, above zero.</param>
    /// <param name="setPoint">Set point within the limits.</param>
    /// <param name="high">Upper limit.</param>
    /// <param name="units">Units of the sheet.</param>
    public static XyPlot Of(
        Func<RotationSpeed, HeatIndex> heat,
        RotationSpeed low,
        RotationSpeed setPoint,
        RotationSpeed high,
        UnitSystem units
    )
    {
        ArgumentNullException.ThrowIfNull(heat);
        HeatAxes axes = new(
            heat,
            low.RevolutionsPerMinute * (1 - Room),
            high.RevolutionsPerMinute * (1 + Room),
            units
        );
        var middle = setPoint.RevolutionsPerMinute;
        var band = heat(setPoint);
        return new XyPlot
        {
            Description = string.Create(
                CultureInfo.InvariantCulture,
                $"Band of the peak temperature, {axes.Degrees(band.Low):0} to {axes.Degrees(band.High):0} {axes.Unit} at {middle:0} rev/min, rising with the spindle speed."
            ),
            Across = new("spindle speed, rev/min", Ticks(axes.Across)),
            Up = new($"peak temperature, {axes.Unit}", Ticks(axes.Up)),
            Lines =
            [
                .. axes.Curve(h => h.Low, Steps),
                .. axes.Curve(h => h.High, Steps),
                .. axes.Solidus(band.Solidus),
            ],
            Points =
            [
                new PlotPoint(axes.Place(middle, h => h.Low), PlotPointKind.Event),
                new PlotPoint(axes.Place(middle, h => h.High), PlotPointKind.Event),
            ],
        };
    }

    private static IReadOnlyList<PlotTick> Ticks(ChartAxis axis) =>
        [.. axis.Ticks().Select(t => new PlotTick(axis.At(t.Value), t.Text))];
}
