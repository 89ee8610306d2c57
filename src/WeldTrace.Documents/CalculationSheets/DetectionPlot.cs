using System.Globalization;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.CalculationSheets;

/// <summary>The smallest leak that a pressure-decay test sees against its hold time, on logarithmic scales, on which it is a straight line.</summary>
public static class DetectionPlot
{
    private const double Reach = 30;

    /// <summary>Lays the plot out, a factor of thirty to each side of the planned hold.</summary>
    /// <param name="sensitivity">Sensitivity at the planned hold.</param>
    /// <param name="hold">Planned hold, above zero.</param>
    /// <param name="wanted">Rate that is to be seen, above zero.</param>
    /// <param name="unit">Symbol of the unit of the rates.</param>
    public static XyPlot Of(
        DecaySensitivity sensitivity,
        TimeSpan hold,
        LeakRate wanted,
        Engineering.Units.Unit unit
    )
    {
        ArgumentNullException.ThrowIfNull(sensitivity);
        ArgumentNullException.ThrowIfNull(unit);
        var minutes = hold.TotalMinutes;
        var limit = unit.FromSi(sensitivity.DetectionLimit.SiValue);
        var rate = unit.FromSi(wanted.SiValue);
        var (left, right) = (minutes / Reach, minutes * Reach);
        var (foot, top) = (Math.Min(limit / Reach, rate / 2), Math.Max(limit * Reach, rate * 2));
        double Across(double value) => Math.Log(value / left) / Math.Log(right / left);
        double Up(double value) => Math.Log(value / foot) / Math.Log(top / foot);

        return new XyPlot
        {
            Description = string.Create(
                CultureInfo.InvariantCulture,
                $"Detection limit against hold time: {limit:G3} {unit.Symbol} at {minutes:G3} min, and inversely with the time; wanted {rate:G3} {unit.Symbol}."
            ),
            Across = new("hold, min", Decades(left, right, Across)),
            Up = new($"detection limit, {unit.Symbol}", Decades(foot, top, Up)),
            Lines =
            [
                new(new(0, Up(limit * Reach)), new(1, Up(limit / Reach)), IsLimit: false),
                new(new(0, Up(rate)), new(1, Up(rate)), IsLimit: true, "wanted"),
            ],
            Points = [new PlotPoint(new(Across(minutes), Up(limit)), PlotPointKind.Event)],
        };
    }

    private static List<PlotTick> Decades(double from, double to, Func<double, double> place)
    {
        List<PlotTick> ticks = [];
        var last = (int)Math.Floor(Math.Log10(to) + 1e-9);
        for (var power = (int)Math.Ceiling(Math.Log10(from) - 1e-9); power <= last; power++)
        {
            var value = Math.Pow(10, power);
            ticks.Add(new(place(value), value.ToString("G3", CultureInfo.InvariantCulture)));
        }

        return ticks;
    }
}
