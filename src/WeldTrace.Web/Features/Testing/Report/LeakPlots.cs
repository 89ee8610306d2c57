using System.Globalization;
using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.TestReports;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Web.Features.Testing.Report;

/// <summary>Readings of a leak test over time, and places on the unrolled vessel, laid out for paper.</summary>
internal static class LeakPlots
{
    public static ReportPlot Pressure(DecayObservation seen) =>
        OverTime(
            "Gauge pressure over time",
            "gauge pressure, bar",
            seen,
            r => r.GaugePressure.InUnit(),
            5
        );

    public static ReportPlot Temperature(DecayObservation seen) =>
        OverTime(
            "Temperature over time",
            "temperature, °C",
            seen,
            r => r.GasTemperature.InUnit(),
            2
        );

    public static ReportPlot Places(DesignContent content, BubbleTest seen)
    {
        var rows = content.Joints.Select(j => (string?)j.Code).Append(null).ToList();
        var places = seen.Marked ?? [];
        return new ReportPlot(
            "Places on the vessel, shell unrolled",
            new XyPlot
            {
                Description =
                    places.Count == 0
                        ? "No place of bubbles is marked."
                        : string.Join(
                            "; ",
                            places.Select(p =>
                                $"{p.JointCode ?? "away from the welds"} at {p.Angle}"
                            )
                        ),
                Across = new PlotAxis(
                    "angle from the weld's mark, °",
                    [.. Enumerable.Range(0, 5).Select(i => new PlotTick(i / 4.0, $"{i * 90}"))]
                ),
                Up = new PlotAxis(
                    "weld",
                    [
                        .. rows.Select(
                            (r, i) => new PlotTick(Height(i, rows.Count), r ?? "elsewhere")
                        ),
                    ]
                ),
                Lines =
                [
                    .. rows.Select(
                        (r, i) =>
                            new PlotLine(
                                new(0, Height(i, rows.Count)),
                                new(1, Height(i, rows.Count)),
                                r is null
                            )
                    ),
                ],
                Points =
                [
                    .. places.Select(p => new PlotPoint(
                        new(p.Angle.InUnit() / 360, Height(rows.IndexOf(p.JointCode), rows.Count)),
                        PlotPointKind.Event
                    )),
                ],
            },
            places.Count == 0 ? "No bubble rose at any marked place." : "Discs: bubbles."
        );
    }

    private static double Height(int index, int count) => (count - index - 0.5) / count;

    private static ReportPlot OverTime(
        string title,
        string axis,
        DecayObservation seen,
        Func<LeakReading, double> value,
        int decimals
    )
    {
        var last = Math.Max(1, seen.Readings[^1].Seconds);
        var (low, high) = (seen.Readings.Min(value), seen.Readings.Max(value));
        // At least some last digits high, so that no two ticks are written alike.
        var room = Math.Max((high - low) * 0.1, 5 * Math.Pow(10, -decimals));
        (low, high) = (low - room, high + room);
        return new ReportPlot(
            title,
            new XyPlot
            {
                Description = FormattableString.Invariant(
                    $"{title}: from {value(seen.Readings[0])} to {value(seen.Readings[^1])} in {last} s."
                ),
                Across = new PlotAxis(
                    "time, s",
                    [
                        .. Enumerable
                            .Range(0, 5)
                            .Select(i => new PlotTick(
                                i / 4.0,
                                (last * i / 4.0).ToString("0", CultureInfo.InvariantCulture)
                            )),
                    ]
                ),
                Up = new PlotAxis(
                    axis,
                    [
                        .. Enumerable
                            .Range(0, 4)
                            .Select(i => new PlotTick(
                                i / 3.0,
                                (low + ((high - low) * i / 3)).ToString(
                                    "F" + decimals,
                                    CultureInfo.InvariantCulture
                                )
                            )),
                    ]
                ),
                Points =
                [
                    .. seen.Readings.Select(r => new PlotPoint(
                        new(r.Seconds / (double)last, (value(r) - low) / (high - low)),
                        PlotPointKind.Open
                    )),
                ],
            },
            "Rings: readings."
        );
    }
}
