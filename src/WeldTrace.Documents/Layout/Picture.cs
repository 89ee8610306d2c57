using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>A photograph with its caption; a file that cannot be printed is said so in its place.</summary>
internal sealed class Picture(Photograph photograph, double highest = 240) : Block
{
    // A PNG is decoded and packed again by the library; a JPEG is copied as it is.
    private const long MostPngPixels = 16_000_000;
    private const string Unreadable =
        "The photograph is not printed: its file is no readable JPEG or PNG picture.";
    private const string TooLarge =
        "The photograph is not printed: it is too large. It is kept with the record.";
    private const double NoticeHeight = 26;

    private readonly PictureHeader? _header = PictureHeader.TryRead(photograph.Content.Span);

    public override double SpaceBefore => 4;

    public override double SpaceAfter => 8;

    public override double Height(double width) =>
        Size(width).Height + Caption.Height(photograph.Caption, width);

    public override void Draw(Canvas canvas, Area area)
    {
        var (width, height) = Size(area.Width);
        var frame = area with { Width = width, Height = height };
        using var image = Open();
        if (image is null)
        {
            DrawRefusal(canvas, frame);
        }
        else
        {
            canvas.Figure(
                photograph.AlternativeText,
                frame,
                () =>
                {
                    UprightImage.Draw(canvas.Graphics, image, frame, _header!.Orientation);
                    if (photograph.Overlay is { } overlay)
                    {
                        var surface = new Surface(canvas, frame.X, frame.Y);
                        OverlayPainter.Draw(surface, overlay, frame.Width);
                    }
                }
            );
        }

        Caption.Draw(canvas, photograph.Caption, area with { Y = area.Y + height });
    }

    private (double Width, double Height) Size(double width)
    {
        if (_header is null || IsTooLarge)
        {
            return (width, NoticeHeight);
        }

        var scale = Math.Min(width / _header.UprightWidth, highest / _header.UprightHeight);
        return (_header.UprightWidth * scale, _header.UprightHeight * scale);
    }

    private bool IsTooLarge =>
        _header is { IsPng: true } && (long)_header.Width * _header.Height > MostPngPixels;

    private XImage? Open()
    {
        if (_header is null || IsTooLarge)
        {
            return null;
        }

        // The library reports a damaged picture by exceptions of many types.
        try
        {
            return XImage.FromStream(new MemoryStream(photograph.Content.ToArray()));
        }
        catch (Exception damage) when (damage is not OutOfMemoryException)
        {
            return null;
        }
    }

    private void DrawRefusal(Canvas canvas, Area frame)
    {
        canvas.Decoration(() =>
            canvas.Rule(frame.X, frame.Y, frame.Right, frame.Y, 0.4, Tone.Rule)
        );
        canvas.Tagged(
            PdfBlockLevelElementTag.Paragraph,
            () =>
            {
                var (x, y) = (frame.X + StateText.Indent(Styles.Body), frame.Y + 6);
                StateText.DrawShape(canvas, MarkShape.Triangle, Styles.Body, frame.X, y);
                var message = IsTooLarge ? TooLarge : Unreadable;
                var line = LineBreaker.Fit(message, Styles.Body, frame.Right - x);
                canvas.Text(line, Styles.Body, x, y);
            }
        );
    }
}

/// <summary>Draws a picture turned as its EXIF orientation asks.</summary>
internal static class UprightImage
{
    public static void Draw(XGraphics graphics, XImage image, Area frame, int orientation)
    {
        var state = graphics.Save();
        graphics.TranslateTransform(frame.X + (frame.Width / 2), frame.Y + (frame.Height / 2));
        graphics.RotateTransform(Turn(orientation));
        graphics.ScaleTransform(orientation is 2 or 4 or 5 or 7 ? -1 : 1, 1);
        var isTurned = orientation is >= 5 and <= 8;
        var width = isTurned ? frame.Height : frame.Width;
        var height = isTurned ? frame.Width : frame.Height;
        graphics.DrawImage(image, -width / 2, -height / 2, width, height);
        graphics.Restore(state);
    }

    private static double Turn(int orientation) =>
        orientation switch
        {
            3 or 4 => 180,
            6 or 7 => 90,
            5 or 8 => 270,
            _ => 0,
        };
}
