using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.CalculationSheets;

/// <summary>The axes of a heat plot: spindle speed in rpm across, temperature in the units of the sheet upwards.</summary>
internal sealed class HeatAxes
{
    private readonly Func<RotationSpeed, HeatIndex> _heat;
    private readonly double _from;
    private readonly double _to;
    private readonly UnitSystem _units;

    public HeatAxes(Func<RotationSpeed, HeatIndex> heat, double from, double to, UnitSystem units)
    {
        (_heat, _from, _to, _units) = (heat, from, to, units);
        var (coldest, hottest) = (At(from), At(to));
        var top = hottest.Solidus is { } solidus && solidus > hottest.High ? solidus : hottest.High;
        Across = new ChartAxis(from, to, 0, 1, 8);
        Up = new ChartAxis(Degrees(coldest.Low) - 10, Degrees(top) + 20, 0, 1, 6);
    }

    public ChartAxis Across { get; }

    public ChartAxis Up { get; }

    public string Unit => _units == UnitSystem.Metric ? "°C" : "°F";

    public double Degrees(Temperature temperature) =>
        _units == UnitSystem.Metric ? temperature.DegreesCelsius : temperature.DegreesFahrenheit;

    public PlotPlace Place(double rpm, Func<HeatIndex, Temperature> end) =>
        new(Across.At(rpm), Up.At(Degrees(end(At(rpm)))));

    public IEnumerable<PlotLine> Curve(Func<HeatIndex, Temperature> end, int steps) =>
        Enumerable
            .Range(0, steps)
            .Select(i => new PlotLine(
                Place(_from + ((_to - _from) * i / steps), end),
                Place(_from + ((_to - _from) * (i + 1) / steps), end),
                IsLimit: false
            ));

    public IEnumerable<PlotLine> Solidus(Temperature? solidus)
    {
        if (solidus is { } limit)
        {
            var up = Up.At(Degrees(limit));
            yield return new PlotLine(new(0, up), new(1, up), IsLimit: true, "solidus");
        }
    }

    private HeatIndex At(double rpm) => _heat(RotationSpeed.FromRevolutionsPerMinute(rpm));
}
