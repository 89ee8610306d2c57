using System.Text;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Components.Drawings;

/// <summary>The pressure ladder laid out in drawing units: minutes to the right, the site's pressure unit upwards.</summary>
public sealed class LadderChart(PressureLadderPlot plot, UnitSystem units)
{
    public const double Left = 52;
    public const double Right = 628;
    public const double Top = 26;
    public const double Bottom = 286;

    /// <summary>A ladder without stages.</summary>
    public static LadderChart Empty { get; } =
        new(new PressureLadderPlot { Stages = [] }, UnitSystem.Metric);

    public Unit Unit { get; } = SiteUnit.For<Pressure>(units);

    /// <summary>Pressure axis, in the site's unit.</summary>
    public NiceScale Vertical { get; } =
        NiceScale.For(SiteUnit.For<Pressure>(units).FromSi(Highest(plot)) * 1.06, 5);

    /// <summary>Time axis, in minutes.</summary>
    public NiceScale Horizontal { get; } = NiceScale.For(Longest(plot), 8);

    // Half the width of a letter of a stage's name, in drawing units.
    private const double HalfLetter = 3.6;

    /// <summary>Path data of the planned course, from zero pressure at the begin of the first stage.</summary>
    public string Planned
    {
        get
        {
            var path = new StringBuilder();
            var at = 0.0;
            foreach (var stage in plot.Stages)
            {
                var target = In(stage.Target);
                path.Append(path.Length == 0 ? 'M' : 'L')
                    .Append(Place(stage.Begins, at))
                    .Append('L')
                    .Append(Place(stage.HoldBegins, target))
                    .Append('L')
                    .Append(Place(stage.Ends, target));
                at = target;
            }

            return path.ToString();
        }
    }

    /// <summary>Path data of what a logger wrote.</summary>
    public string Traced(IReadOnlyList<LadderReading> trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        return string.Concat(
            trace.Select((r, i) => (i == 0 ? "M" : "L") + Place(r.At, Math.Max(0, In(r.Gauge))))
        );
    }

    /// <summary>The pressure as a number in the site's unit.</summary>
    public double In(Pressure pressure) => Unit.FromSi(pressure.SiValue);

    public double X(double minutes) => Left + (minutes / Horizontal.Top * (Right - Left));

    public double Y(double pressure) => Bottom - (pressure / Vertical.Top * (Bottom - Top));

    public string Across(double pressure) => $"M{N(Left)} {N(Y(pressure))} H{N(Right)}";

    public string Foot(double minutes) => $"M{N(X(minutes))} {N(Bottom)} v5";

    public string Hold(LadderStage stage) =>
        $"M{Place(stage.HoldBegins, In(stage.Target))} L{Place(stage.Ends, In(stage.Target))}";

    /// <summary>Where the middle of a stage's name stands: over its hold, and never beyond the right edge.</summary>
    public double MiddleOfName(LadderStage stage)
    {
        ArgumentNullException.ThrowIfNull(stage);
        var middle = X((stage.HoldBegins.TotalMinutes + stage.Ends.TotalMinutes) / 2);
        return Math.Min(middle, Right - (HalfLetter * stage.Name.Length));
    }

    /// <summary>A time since the start, in minutes.</summary>
    public static string Minutes(TimeSpan time) =>
        SensibleDigits.Fixed(time.TotalMinutes, 1) + "\u00a0min";

    private static double Highest(PressureLadderPlot plot) =>
        plot
            .Stages.Select(s => s.Target)
            .Concat(Read(plot).Select(r => r.Gauge))
            .Concat(plot.Levels.Select(l => l.Gauge))
            .Select(p => p.SiValue)
            .DefaultIfEmpty()
            .Max();

    private static double Longest(PressureLadderPlot plot) =>
        plot
            .Stages.Select(s => s.Ends.TotalMinutes)
            .Concat(Read(plot).Select(r => r.At.TotalMinutes))
            .DefaultIfEmpty()
            .Max();

    private static IEnumerable<LadderReading> Read(PressureLadderPlot plot) =>
        plot.Readings.Concat(plot.Traces.SelectMany(t => t));

    private string Place(TimeSpan time, double pressure) =>
        $"{N(X(time.TotalMinutes))} {N(Y(pressure))} ";

    private static string N(double value) => PlanGeometry.Number(value);
}
