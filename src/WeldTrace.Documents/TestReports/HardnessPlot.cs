using System.Globalization;
using WeldTrace.Documents.Drawings;
using WeldTrace.Engineering.Joints;

namespace WeldTrace.Documents.TestReports;

/// <summary>A hardness traverse drawn across the weld, with its sides.</summary>
public static class HardnessPlot
{
    /// <summary>Lays the plot out.</summary>
    /// <param name="points">Indentations in order of position; below zero is the advancing side.</param>
    /// <param name="parent">Hardness of the parent.</param>
    /// <param name="atLeast">Least hardness permitted; null when there is none.</param>
    public static XyPlot Of(IReadOnlyList<HardnessPoint> points, double parent, double? atLeast)
    {
        ArgumentNullException.ThrowIfNull(points);
        double[] levels =
        [
            .. points.Select(p => p.Vickers),
            parent,
            .. atLeast is { } l ? [l] : (double[])[],
        ];
        var room = Math.Max(levels.Max() - levels.Min(), 1) * 0.12;
        var (left, right) = (points[0].Position.Millimetres, points[^1].Position.Millimetres);
        var across = new ChartAxis(left, right, 0, 1, 8);
        var up = new ChartAxis(levels.Min() - room, levels.Max() + room, 0, 1, 5);
        PlotPlace At(double millimetres, double vickers) =>
            new(across.At(millimetres), up.At(vickers));
        List<PlotLine> lines =
        [
            .. points
                .Zip(points.Skip(1))
                .Select(p => new PlotLine(
                    At(p.First.Position.Millimetres, p.First.Vickers),
                    At(p.Second.Position.Millimetres, p.Second.Vickers),
                    false
                )),
            new(At(left, parent), At(right, parent), true, "parent"),
        ];
        if (atLeast is { } least)
        {
            lines.Add(new(At(left, least), At(right, least), true, "least"));
        }

        if (left < 0 && right > 0)
        {
            lines.Add(new(At(0, levels.Min() - room), At(0, levels.Max() + room), true, "centre"));
        }

        return new XyPlot
        {
            Description = string.Create(
                CultureInfo.InvariantCulture,
                $"Hardness at {points.Count} places across the weld, from {left:0.##} mm on the advancing side to {right:0.##} mm on the retreating side: {levels.Min():0.#} to {levels.Max():0.#} HV."
            ),
            Across = new(
                "advancing side (below zero), mm from the weld centre, retreating side",
                Ticks(across)
            ),
            Up = new("HV", Ticks(up)),
            Lines = lines,
            Points =
            [
                .. points.Select(p => new PlotPoint(
                    At(p.Position.Millimetres, p.Vickers),
                    atLeast is { } limit && p.Vickers < limit
                        ? PlotPointKind.Outside
                        : PlotPointKind.Event
                )),
            ],
        };
    }

    private static IReadOnlyList<PlotTick> Ticks(ChartAxis axis) =>
        [.. axis.Ticks().Select(t => new PlotTick(axis.At(t.Value), t.Text))];
}
