using System.Globalization;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Documents.Tools;

/// <summary>
/// Failed part of the tools against the length welded, on scales on which a Weibull distribution is a straight line: ln t across,
/// ln(−ln(1 − p)) upwards.
/// </summary>
public static class WeibullPlot
{
    private const double LeastPart = 0.01;
    private const double LargestPart = 0.99;
    private const double Room = 1.4;

    private static readonly double[] Parts =
    [
        0.001,
        0.01,
        0.02,
        0.05,
        0.1,
        0.2,
        0.5,
        0.8,
        0.9,
        0.99,
    ];

    /// <summary>Lays the plot out.</summary>
    /// <param name="records">Failed and censored tools, each with a length above zero; at least one.</param>
    /// <param name="fit">Fitted life; null when there are too few failures.</param>
    /// <param name="now">Length welded by the tool in question.</param>
    /// <param name="units">Units of the site.</param>
    public static XyPlot Of(
        IReadOnlyList<LifeRecord> records,
        ToolLifeFit? fit,
        Length now,
        UnitSystem units
    )
    {
        ArgumentNullException.ThrowIfNull(records);
        var positions = SurvivalEstimate.PlottingPositions(records);
        var least = positions.Select(p => p.FailedPart).Append(LeastPart).Min();
        var lengths = records.Select(r => r.Used.Metres).ToList();
        var (from, to) = (lengths.Min() / Room, lengths.Max() * Room);
        double Across(double metres) => Math.Log(metres / from) / Math.Log(to / from);
        double Up(double part) =>
            (Reduced(part) - Reduced(least)) / (Reduced(LargestPart) - Reduced(least));

        return new XyPlot
        {
            Description = string.Create(
                CultureInfo.InvariantCulture,
                $"Weibull plot of {records.Count} tools, {records.Count(r => r.Failed)} of them failed{(fit is null ? "; too few failures for a line" : $"; shape {fit.Shape:0.00}, scale {fit.Scale.Metres:0.0} m")}."
            ),
            Across = new(
                $"welded, {(units == UnitSystem.Metric ? "m" : "ft")}",
                Ticks(from, to, units, Across)
            ),
            Up = new(
                "failed, %",
                [
                    .. Parts
                        .Where(p => p >= least * 0.999)
                        .Select(p => new PlotTick(Up(p), Percent(p))),
                ]
            ),
            Lines = [.. Fitted(fit, from, to, least, Across, Up), .. Now(now, from, to, Across)],
            Points =
            [
                .. records
                    .Where(r => !r.Failed)
                    .Select(r => new PlotPoint(new(Across(r.Used.Metres), 0), PlotPointKind.Open)),
                .. positions.Select(p => new PlotPoint(
                    new(Across(p.At.Metres), Math.Min(1, Up(p.FailedPart))),
                    PlotPointKind.Event
                )),
            ],
        };
    }

    private static double Reduced(double part) => Math.Log(-Math.Log(1 - part));

    private static IEnumerable<PlotLine> Fitted(
        ToolLifeFit? fit,
        double from,
        double to,
        double least,
        Func<double, double> across,
        Func<double, double> up
    )
    {
        if (fit is null)
        {
            yield break;
        }

        double Metres(double part) => fit.Scale.Metres * Math.Exp(Reduced(part) / fit.Shape);
        double Part(double metres) => 1 - Math.Exp(-Math.Pow(metres / fit.Scale.Metres, fit.Shape));
        var begin = Math.Max(from, Metres(least));
        var end = Math.Min(to, Metres(LargestPart));
        if (begin < end)
        {
            yield return new(
                new(across(begin), up(Math.Max(least, Part(begin)))),
                new(across(end), up(Math.Min(LargestPart, Part(end)))),
                false
            );
        }
    }

    private static IEnumerable<PlotLine> Now(
        Length now,
        double from,
        double to,
        Func<double, double> across
    )
    {
        if (now.Metres > from && now.Metres < to)
        {
            var x = across(now.Metres);
            yield return new(new(x, 0), new(x, 1), true, "this tool");
        }
    }

    private static List<PlotTick> Ticks(
        double from,
        double to,
        UnitSystem units,
        Func<double, double> across
    )
    {
        var perMetre = QuantityText.DistanceValue(Length.FromMetres(1), units);
        var ticks = new List<PlotTick>();
        for (
            var decade = Math.Pow(10, Math.Floor(Math.Log10(from * perMetre)));
            decade <= to * perMetre;
            decade *= 10
        )
        {
            foreach (var round in new[] { 1, 2, 5 })
            {
                var metres = round * decade / perMetre;
                if (metres >= from && metres <= to)
                {
                    var text = (round * decade).ToString("0.####", CultureInfo.InvariantCulture);
                    ticks.Add(new(across(metres), text));
                }
            }
        }

        return ticks;
    }

    private static string Percent(double part) =>
        (part * 100).ToString("0.#", CultureInfo.InvariantCulture);
}
