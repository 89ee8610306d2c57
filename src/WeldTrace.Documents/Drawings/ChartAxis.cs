using System.Globalization;

namespace WeldTrace.Documents.Drawings;

/// <summary>A linear axis with round tick values (1, 2 or 5 times a power of ten).</summary>
internal sealed class ChartAxis
{
    private readonly double _from;
    private readonly double _to;
    private readonly double _start;
    private readonly double _length;
    private readonly string _format;

    /// <summary>Lays the range out from <paramref name="start"/> over <paramref name="length"/>, which may be negative.</summary>
    public ChartAxis(double from, double to, double start, double length, int mostTicks)
    {
        (_from, _to) = to > from ? (from, to) : (from - 0.5, from + 0.5);
        (_start, _length) = (start, length);
        Step = RoundStep((_to - _from) / Math.Max(1, mostTicks));
        var decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(Step) - 1e-9), 0, 9);
        _format = string.Create(CultureInfo.InvariantCulture, $"F{decimals}");
    }

    public double Step { get; }

    public double At(double value) => _start + ((value - _from) / (_to - _from) * _length);

    public IEnumerable<(double Value, string Text)> Ticks()
    {
        var first = Math.Ceiling((_from / Step) - 1e-9);
        var last = Math.Floor((_to / Step) + 1e-9);
        for (var i = first; i <= last; i++)
        {
            // Adding zero takes the sign from a negative zero.
            var value = (i * Step) + 0.0;
            yield return (value, value.ToString(_format, CultureInfo.InvariantCulture));
        }
    }

    private static double RoundStep(double rough)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var share = rough / power;
        return power
            * share switch
            {
                <= 1 => 1,
                <= 2 => 2,
                <= 5 => 5,
                _ => 10,
            };
    }
}
