using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Drawings;

/// <summary>A plot on paper.</summary>
internal sealed class XyPlotDrawing(XyPlot plot) : Drawing
{
    private const double LeftRoom = 34;
    private const double RightRoom = 8;
    private const double TopRoom = 16;
    private const double FootRoom = 26;

    public override string AlternativeText => plot.Description;

    public override double Height(double width) => 170;

    public override void Draw(Surface surface, double width)
    {
        var height = Height(width);
        Spot At(PlotPlace place) =>
            new(
                LeftRoom + (place.Across * (width - LeftRoom - RightRoom)),
                height - FootRoom - (place.Up * (height - TopRoom - FootRoom))
            );
        DrawAxes(surface, At, width);
        foreach (var line in plot.Lines)
        {
            DrawLine(surface, line, At);
        }

        foreach (var point in plot.Points)
        {
            DrawPoint(surface, point.Kind, At(point.Place));
        }
    }

    private void DrawAxes(Surface surface, Func<PlotPlace, Spot> at, double width)
    {
        surface.Line(at(new(0, 0)), at(new(1, 0)), 0.5);
        surface.Line(at(new(0, 0)), at(new(0, 1)), 0.5);
        foreach (var tick in plot.Up.Ticks)
        {
            var left = at(new(0, tick.At));
            surface.Line(left, at(new(1, tick.At)), 0.25, Tone.Rule);
            surface.Text(tick.Text, left with { X = left.X - 4 }, Styles.Drawing, TextAnchor.Right);
        }

        foreach (var tick in plot.Across.Ticks)
        {
            var foot = at(new(tick.At, 0));
            surface.Line(foot, foot with { Y = foot.Y + 3 }, 0.4);
            surface.Text(
                tick.Text,
                foot with
                {
                    Y = foot.Y + 9,
                },
                Styles.Drawing,
                TextAnchor.Middle
            );
        }

        surface.Text(plot.Up.Title, new Spot(0, 5), Styles.DrawingStrong);
        var end = new Spot(width - RightRoom, at(new(0, 0)).Y + 20);
        surface.Text(plot.Across.Title, end, Styles.Drawing, TextAnchor.Right);
    }

    private static void DrawLine(Surface surface, PlotLine line, Func<PlotPlace, Spot> at)
    {
        var (from, to) = (at(line.From), at(line.To));
        if (line.IsLimit)
        {
            surface.Dashed(from, to, 0.8, Tone.Ink, 4, 3);
        }
        else
        {
            surface.Line(from, to, 1);
        }

        if (line.Name is { } name)
        {
            surface.Text(
                name,
                new Spot(to.X - 3, to.Y + (line.From.Up < line.To.Up ? 6 : -5)),
                Styles.Drawing,
                TextAnchor.Right
            );
        }
    }

    private static void DrawPoint(Surface surface, PlotPointKind kind, Spot at)
    {
        switch (kind)
        {
            case PlotPointKind.Event:
                surface.Disc(at, 2.4, Tone.Ink);
                break;
            case PlotPointKind.Open:
                surface.Disc(at, 2.6, Tone.Paper);
                surface.Circle(at, 2.6, 0.8);
                break;
            case PlotPointKind.Outside:
                surface.Line(new(at.X - 3, at.Y - 3), new(at.X + 3, at.Y + 3), 1.2);
                surface.Line(new(at.X - 3, at.Y + 3), new(at.X + 3, at.Y - 3), 1.2);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(kind), kind, null);
        }
    }
}
