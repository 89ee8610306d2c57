using PdfSharp.Drawing;

namespace WeldTrace.Documents.Layout;

/// <summary>A point of a drawing; y grows downwards.</summary>
internal readonly record struct Spot(double X, double Y)
{
    /// <summary>The point at a distance from the centre, at an angle clockwise from the top.</summary>
    public Spot Polar(double radius, double degrees)
    {
        var (sine, cosine) = Math.SinCos(degrees * Math.PI / 180);
        return new Spot(X + (radius * sine), Y - (radius * cosine));
    }
}

internal enum TextAnchor
{
    Left,
    Middle,
    Right,
}

/// <summary>Where a vector drawing draws: points from its own upper left corner.</summary>
internal sealed class Surface(Canvas canvas, double left, double top)
{
    private XGraphics Graphics => canvas.Graphics;

    public void Line(Spot from, Spot to, double weight, Tone tone = Tone.Ink) =>
        canvas.Rule(left + from.X, top + from.Y, left + to.X, top + to.Y, weight, tone);

    public void Dashed(Spot from, Spot to, double weight, Tone tone, params double[] dashes) =>
        Graphics.DrawLine(Dashes(tone, weight, dashes), Point(from), Point(to));

    public void Polyline(IReadOnlyList<Spot> points, double weight, Tone tone = Tone.Ink)
    {
        if (points.Count > 1)
        {
            Graphics.DrawLines(Ink.Pen(tone, weight), [.. points.Select(Point)]);
        }
    }

    public void Polygon(Tone tone, params ReadOnlySpan<Spot> points)
    {
        var corners = new XPoint[points.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            corners[i] = Point(points[i]);
        }

        Graphics.DrawPolygon(Ink.Brush(tone), corners, XFillMode.Winding);
    }

    public void Rectangle(double x, double y, double width, double height, Tone tone) =>
        canvas.Fill(new Area(left + x, top + y, width, height), tone);

    public void Circle(Spot centre, double radius, double weight, Tone tone = Tone.Ink) =>
        Graphics.DrawEllipse(Ink.Pen(tone, weight), Box(centre, radius));

    public void DashedCircle(
        Spot centre,
        double radius,
        double weight,
        Tone tone,
        params double[] dashes
    ) => Graphics.DrawEllipse(Dashes(tone, weight, dashes), Box(centre, radius));

    public void Disc(Spot centre, double radius, Tone tone) =>
        Graphics.DrawEllipse(Ink.Brush(tone), Box(centre, radius));

    /// <summary>Fills a rectangle with rising lines.</summary>
    public void Hatch(Area area, double distance, double weight)
    {
        for (var offset = distance; offset < area.Width + area.Height; offset += distance)
        {
            var low = new Spot(
                area.X + Math.Max(0, offset - area.Height),
                area.Y + Math.Min(offset, area.Height)
            );
            var high = new Spot(
                area.X + Math.Min(offset, area.Width),
                area.Y + Math.Max(0, offset - area.Width)
            );
            Line(low, high, weight);
        }
    }

    /// <summary>The area between two circles.</summary>
    public void Ring(Spot centre, double inner, double outer, Tone tone)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Alternate };
        path.AddEllipse(Box(centre, outer));
        path.AddEllipse(Box(centre, inner));
        Graphics.DrawPath(Ink.Brush(tone), path);
    }

    /// <summary>An arc from an angle clockwise from the top over a sweep, positive clockwise.</summary>
    public void Arc(
        Spot centre,
        double radius,
        double fromDegrees,
        double sweepDegrees,
        double weight,
        Tone tone = Tone.Ink
    ) =>
        Graphics.DrawArc(
            Ink.Pen(tone, weight),
            Box(centre, radius),
            fromDegrees - 90,
            sweepDegrees
        );

    /// <summary>A filled path of rectangles, drawn as one.</summary>
    public void Rectangles(IEnumerable<Area> areas)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        foreach (var area in areas)
        {
            path.AddRectangle(left + area.X, top + area.Y, area.Width, area.Height);
        }

        Graphics.DrawPath(Ink.Brush(Tone.Ink), path);
    }

    /// <summary>One line of text with its middle height at the point.</summary>
    public void Text(
        string text,
        Spot at,
        TextStyle style,
        TextAnchor anchor = TextAnchor.Left,
        double room = double.PositiveInfinity
    )
    {
        var line = LineBreaker.Fit(text, style, room);
        var shift = anchor switch
        {
            TextAnchor.Left => 0,
            TextAnchor.Middle => style.Width(line) / 2,
            TextAnchor.Right => style.Width(line),
            _ => throw new ArgumentOutOfRangeException(nameof(anchor), anchor, null),
        };
        canvas.Text(line, style, left + at.X - shift, top + at.Y - (style.Leading / 2));
    }

    public void Shape(MarkShape shape, Spot at, double radius) =>
        Mark.Draw(Graphics, shape, left + at.X, top + at.Y, radius);

    private static XPen Dashes(Tone tone, double weight, double[] dashes)
    {
        var pen = Ink.Pen(tone, weight);
        pen.DashPattern = dashes;
        return pen;
    }

    private XPoint Point(Spot spot) => new(left + spot.X, top + spot.Y);

    private XRect Box(Spot centre, double radius) =>
        new(left + centre.X - radius, top + centre.Y - radius, 2 * radius, 2 * radius);
}
