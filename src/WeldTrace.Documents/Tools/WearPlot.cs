using System.Globalization;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Documents.Tools;

/// <summary>What was measured on a pin at one inspection.</summary>
/// <param name="AtUse">Length welded by then.</param>
/// <param name="PinLength">Measured length of the pin.</param>
/// <param name="IsGood">Whether the inspection found it within its limits.</param>
public sealed record WearReadingLine(Length AtUse, Length PinLength, bool IsGood);

/// <summary>The measured length of a pin against the length welded, with its limit and the line through the readings.</summary>
public static class WearPlot
{
    /// <summary>Lays the plot out.</summary>
    /// <param name="readings">Inspections at which the pin was measured; at least one.</param>
    /// <param name="drawn">Length of a new pin.</param>
    /// <param name="least">Least permitted length.</param>
    /// <param name="lifeLimit">Length of weld at which the tool is withdrawn.</param>
    /// <param name="trend">Line through the readings; null when there are too few.</param>
    /// <param name="units">Units of the site.</param>
    public static XyPlot Of(
        IReadOnlyList<WearReadingLine> readings,
        Length drawn,
        Length least,
        Length lifeLimit,
        WearTrend? trend,
        UnitSystem units
    )
    {
        ArgumentNullException.ThrowIfNull(readings);
        var lowest = Math.Min(least.Metres, readings.Min(r => r.PinLength.Metres));
        var highest = Math.Max(drawn.Metres, readings.Max(r => r.PinLength.Metres));
        var room = (highest - lowest) * 0.12;
        var longest = Math.Max(lifeLimit.Metres, readings.Max(r => r.AtUse.Metres));
        var across = Axis(Distance(0, units), Distance(longest, units), 8);
        var up = Axis(Dimension(lowest - room, units), Dimension(highest + room, units), 5);
        PlotPlace At(double welded, double length) =>
            new(across.At(Distance(welded, units)), up.At(Dimension(length, units)));

        var lines = new List<PlotLine>
        {
            new(At(0, least.Metres), At(longest, least.Metres), true, "least length"),
        };
        if (trend is not null)
        {
            double On(double welded) =>
                drawn.Metres
                - trend.WearAtStart.Metres
                - (trend.MicrometresPerMetre * 1e-6 * welded);
            var (begin, end) = Within(trend, On(0), longest, lowest - room, highest + room);
            lines.Add(new(At(begin, On(begin)), At(end, On(end)), false));
        }

        return new XyPlot
        {
            Description = string.Create(
                CultureInfo.InvariantCulture,
                $"Measured length of the pin at {readings.Count} inspections, against a least length of {least.Millimetres:0.###} mm."
            ),
            Across = new($"welded, {(units == UnitSystem.Metric ? "m" : "ft")}", Ticks(across)),
            Up = new($"pin length, {(units == UnitSystem.Metric ? "mm" : "in")}", Ticks(up)),
            Lines = lines,
            Points =
            [
                .. readings.Select(r => new PlotPoint(
                    At(r.AtUse.Metres, r.PinLength.Metres),
                    r.IsGood ? PlotPointKind.Event : PlotPointKind.Outside
                )),
            ],
        };
    }

    // The line is drawn no further than the plot reaches.
    private static (double Begin, double End) Within(
        WearTrend trend,
        double start,
        double longest,
        double foot,
        double top
    )
    {
        var fall = trend.MicrometresPerMetre * 1e-6;
        if (fall == 0)
        {
            return (0, longest);
        }

        var (atTop, atFoot) = ((start - top) / fall, (start - foot) / fall);
        var begin = Math.Clamp(Math.Min(atTop, atFoot), 0, longest);
        return (begin, Math.Clamp(Math.Max(atTop, atFoot), begin, longest));
    }

    private static ChartAxis Axis(double from, double to, int ticks) => new(from, to, 0, 1, ticks);

    private static IReadOnlyList<PlotTick> Ticks(ChartAxis axis) =>
        [.. axis.Ticks().Select(t => new PlotTick(axis.At(t.Value), t.Text))];

    private static double Distance(double metres, UnitSystem units) =>
        QuantityText.DistanceValue(Length.FromMetres(metres), units);

    private static double Dimension(double metres, UnitSystem units) =>
        units == UnitSystem.Metric
            ? Length.FromMetres(metres).Millimetres
            : Length.FromMetres(metres).Inches;
}
