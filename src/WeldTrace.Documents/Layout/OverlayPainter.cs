namespace WeldTrace.Documents.Layout;

/// <summary>Draws over a picture what was measured on it: black on a light edge, so that it reads on any ground.</summary>
internal static class OverlayPainter
{
    private const double PartForBar = 0.25;

    public static void Draw(Surface surface, PictureOverlay overlay, double width)
    {
        var perPixel = width / overlay.Width;
        foreach (var shape in overlay.Shapes)
        {
            DrawShape(surface, shape, perPixel);
        }

        if (overlay.MicrometresPerPixel is { } micrometres)
        {
            DrawBar(surface, micrometres / perPixel, width, overlay.Height * perPixel);
        }
    }

    private static void DrawShape(Surface surface, OverlayShape shape, double perPixel)
    {
        Spot[] spots = [.. shape.Points.Select(p => new Spot(p.X * perPixel, p.Y * perPixel))];
        Spot[] path = shape.IsClosed ? [.. spots, spots[0]] : spots;
        surface.Polyline(path, 2.4, Tone.Paper);
        if (shape.IsDashed)
        {
            foreach (var (from, to) in path.Zip(path.Skip(1)))
            {
                surface.Dashed(from, to, 0.8, Tone.Ink, 4, 3);
            }
        }
        else
        {
            surface.Polyline(path, 0.9);
        }

        foreach (var spot in spots)
        {
            surface.Disc(spot, 2.4, Tone.Paper);
            surface.Circle(spot, 1.6, 0.8);
        }

        Label(surface, spots[0], shape.Name);
        if (shape.EndName is { } name)
        {
            Label(surface, spots[^1], name);
        }
    }

    private static void Label(Surface surface, Spot at, string text)
    {
        if (text.Length == 0)
        {
            return;
        }

        var style = Styles.DrawingStrong;
        var (x, y) = (at.X + 5, Math.Max(at.Y - 9, 7));
        surface.Rectangle(x - 1.5, y - 5.5, style.Width(text) + 3, 11, Tone.Paper);
        surface.Text(text, new Spot(x, y), style);
    }

    // The longest bar of 1, 2 or 5 times a power of ten that a quarter of the picture has room for.
    private static void DrawBar(
        Surface surface,
        double micrometresPerPoint,
        double width,
        double height
    )
    {
        var most = width * PartForBar * micrometresPerPoint;
        var power = Math.Pow(10, Math.Floor(Math.Log10(most)));
        var length = new[] { 5.0, 2, 1 }.First(n => n * power <= most) * power;
        var points = length / micrometresPerPoint;
        var text =
            length >= 1000
                ? FormattableString.Invariant($"{length / 1000:0.###} mm")
                : FormattableString.Invariant($"{length:0.###} µm");
        surface.Rectangle(6, height - 26, Math.Max(points, 30) + 12, 22, Tone.Paper);
        surface.Rectangle(12, height - 11, points, 3, Tone.Ink);
        surface.Text(text, new Spot(12, height - 18), Styles.DrawingStrong);
    }
}
