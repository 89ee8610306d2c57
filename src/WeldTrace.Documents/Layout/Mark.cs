using PdfSharp.Drawing;

namespace WeldTrace.Documents.Layout;

/// <summary>Draws the shape of a state; each is told from the others without colour.</summary>
internal static class Mark
{
    /// <summary>Draws a shape about as tall as a capital letter round its centre.</summary>
    public static void Draw(XGraphics graphics, MarkShape shape, double x, double y, double radius)
    {
        var ink = Ink.Brush(Tone.Ink);
        var pen = Ink.Pen(Tone.Ink, radius * 0.36);
        var outline = radius * 0.84;
        switch (shape)
        {
            case MarkShape.Disc:
                graphics.DrawEllipse(ink, x - radius, y - radius, 2 * radius, 2 * radius);
                break;
            case MarkShape.Ring:
                Ring(graphics, pen, x, y, outline);
                break;
            case MarkShape.HalfDisc:
                Ring(graphics, pen, x, y, outline);
                graphics.DrawPie(ink, x - outline, y - outline, 2 * outline, 2 * outline, 90, 180);
                break;
            case MarkShape.Cross:
                var cross = Ink.Pen(Tone.Ink, radius * 0.5);
                var arm = radius * 0.8;
                graphics.DrawLine(cross, x - arm, y - arm, x + arm, y + arm);
                graphics.DrawLine(cross, x - arm, y + arm, x + arm, y - arm);
                break;
            case MarkShape.Triangle:
                XPoint[] corners =
                [
                    new(x, y - radius),
                    new(x + radius, y + (0.8 * radius)),
                    new(x - radius, y + (0.8 * radius)),
                ];
                graphics.DrawPolygon(ink, corners, XFillMode.Winding);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(shape), shape, null);
        }
    }

    private static void Ring(XGraphics graphics, XPen pen, double x, double y, double radius) =>
        graphics.DrawEllipse(pen, x - radius, y - radius, 2 * radius, 2 * radius);
}
