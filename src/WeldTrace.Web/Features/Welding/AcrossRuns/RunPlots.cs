using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Statistics;
using WeldTrace.Web.Components.Drawings;
using WeldTrace.Web.Components.Figures;

namespace WeldTrace.Web.Features.Welding.AcrossRuns;

/// <summary>Plots of values over the order of runs or over the metres of a tool.</summary>
internal static class RunPlots
{
    private const int Ticks = 5;

    /// <param name="across">Where each value stands on the horizontal axis, ascending.</param>
    /// <param name="values">The values.</param>
    /// <param name="limits">Limits at each value; null: none.</param>
    /// <param name="titles">Titles of the horizontal and the upright axis.</param>
    /// <param name="description">The plot in words.</param>
    public static XyPlot Of(
        IReadOnlyList<double> across,
        IReadOnlyList<double> values,
        Func<int, ControlLimits>? limits,
        (string Across, string Up) titles,
        string description
    )
    {
        var all = values.Concat(
            limits is null
                ? []
                : Enumerable
                    .Range(0, values.Count)
                    .SelectMany(i => new[] { limits(i).Lower, limits(i).Upper })
        );
        var (low, high) = Room(all.Min(), all.Max());
        var (left, right) = Room(across[0], across[^1]);
        PlotPlace Place(int i, double value) =>
            new((across[i] - left) / (right - left), (value - low) / (high - low));
        return new XyPlot
        {
            Description = description,
            Across = new(titles.Across, TicksOf(left, right)),
            Up = new(titles.Up, TicksOf(low, high)),
            Lines = limits is null ? [] : [.. Limits(values.Count, limits, Place)],
            Points =
            [
                .. values.Select(
                    (value, i) =>
                        new PlotPoint(
                            Place(i, value),
                            limits?.Invoke(i).IsSignal(value) == true
                                ? PlotPointKind.Outside
                                : PlotPointKind.Event
                        )
                ),
            ],
        };
    }

    private static IEnumerable<PlotLine> Limits(
        int count,
        Func<int, ControlLimits> limits,
        Func<int, double, PlotPlace> place
    )
    {
        for (var i = 1; i < count; i++)
        {
            var (from, to) = (limits(i - 1), limits(i));
            var isLast = i == count - 1;
            yield return Line(from.Lower, to.Lower, true, isLast ? "lower limit" : null, i);
            yield return Line(from.Upper, to.Upper, true, isLast ? "upper limit" : null, i);
            yield return Line(from.Centre, to.Centre, false, isLast ? "centre" : null, i);
        }

        PlotLine Line(double from, double to, bool isLimit, string? name, int i) =>
            new(place(i - 1, from), place(i, to), isLimit, name);
    }

    /// <summary>Ticks at round numbers, with as many decimals as their step has.</summary>
    private static IReadOnlyList<PlotTick> TicksOf(double from, double to)
    {
        var step = NiceScale.For(to - from, Ticks).Step;
        var decimals = (int)Math.Max(0, Math.Ceiling(-Math.Log10(step) - 1e-9));
        return
        [
            .. Enumerable
                .Range(0, Ticks + 1)
                .Select(i => (Math.Ceiling(from / step) + i) * step)
                .Where(value => value <= to)
                .Select(value => new PlotTick(
                    (value - from) / (to - from),
                    SensibleDigits.Fixed(value, decimals)
                )),
        ];
    }

    private static (double From, double To) Room(double low, double high)
    {
        var room = (high - low) * 0.05;
        room = room > 0 ? room : Math.Max(1, Math.Abs(high) * 0.05);
        return (low - room, high + room);
    }
}
