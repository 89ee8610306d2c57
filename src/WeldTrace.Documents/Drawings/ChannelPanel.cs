using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Drawings;

/// <summary>Draws one channel of a process log into its panel.</summary>
internal sealed class ChannelPanel(
    Surface surface,
    LogChannel channel,
    IReadOnlyList<double> timesInSeconds,
    ChartAxis time,
    Area panel
)
{
    public void Draw()
    {
        var axis = ValueAxis();
        var title = channel.Unit.Length == 0 ? channel.Name : $"{channel.Name}, {channel.Unit}";
        surface.Text(
            title,
            new Spot(panel.X, panel.Y - 6),
            Styles.DrawingStrong,
            room: panel.Width
        );
        DrawWindow(axis);
        DrawExcursions();
        DrawScale(axis);
        var bins = Math.Max(1, (int)panel.Width);
        foreach (var run in Thinning.MinMax(timesInSeconds, channel.ValuesInUnit, bins))
        {
            surface.Polyline(
                [.. run.Select(sample => new Spot(time.At(sample.Time), axis.At(sample.Value)))],
                0.6
            );
        }
    }

    private ChartAxis ValueAxis()
    {
        var (least, greatest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var value in channel.ValuesInUnit.Where(double.IsFinite))
        {
            least = Math.Min(least, value);
            greatest = Math.Max(greatest, value);
        }

        double?[] limits = [channel.Window?.LowerInUnit, channel.Window?.UpperInUnit];
        foreach (var limit in limits.OfType<double>().Where(double.IsFinite))
        {
            least = Math.Min(least, limit);
            greatest = Math.Max(greatest, limit);
        }

        if (!double.IsFinite(least))
        {
            (least, greatest) = (0, 1);
        }

        var margin = Math.Max(greatest - least, Math.Abs(greatest) * 1e-6) * 0.06;
        return new ChartAxis(least - margin, greatest + margin, panel.Bottom, -panel.Height, 4);
    }

    private void DrawWindow(ChartAxis axis)
    {
        if (channel.Window is not { } window)
        {
            return;
        }

        var top = window.UpperInUnit is { } upper ? axis.At(upper) : panel.Y;
        var bottom = window.LowerInUnit is { } lower ? axis.At(lower) : panel.Bottom;
        surface.Rectangle(panel.X, top, panel.Width, Math.Max(0, bottom - top), Tone.Band);
        Level(window.UpperInUnit, axis, 4, 2);
        Level(window.LowerInUnit, axis, 4, 2);
        Level(window.SetPointInUnit, axis, 1, 2.5);
    }

    private void Level(double? value, ChartAxis axis, params double[] dashes)
    {
        if (value is { } level)
        {
            var y = axis.At(level);
            surface.Dashed(new Spot(panel.X, y), new Spot(panel.Right, y), 0.5, Tone.Quiet, dashes);
        }
    }

    private void DrawExcursions()
    {
        foreach (var excursion in channel.Excursions)
        {
            var from = time.At(excursion.From.TotalSeconds);
            var to = Math.Max(from + 1.5, time.At(excursion.To.TotalSeconds));
            surface.Hatch(panel with { X = from, Width = to - from }, 2.2, 0.35);
            surface.Text(
                excursion.Number,
                new Spot((from + to) / 2, panel.Y - 6),
                Styles.DrawingStrong,
                TextAnchor.Middle
            );
        }
    }

    private void DrawScale(ChartAxis axis)
    {
        surface.Line(new Spot(panel.X, panel.Y), new Spot(panel.X, panel.Bottom), 0.5);
        surface.Line(new Spot(panel.X, panel.Bottom), new Spot(panel.Right, panel.Bottom), 0.5);
        foreach (var (value, text) in axis.Ticks())
        {
            var y = axis.At(value);
            surface.Line(new Spot(panel.X - 3, y), new Spot(panel.X, y), 0.4);
            surface.Text(text, new Spot(panel.X - 5, y), Styles.Drawing, TextAnchor.Right);
        }
    }
}
