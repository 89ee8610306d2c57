using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>A vector drawing that fits itself into a width.</summary>
internal abstract class Drawing
{
    /// <summary>Says in words what the drawing shows.</summary>
    public abstract string AlternativeText { get; }

    public abstract double Height(double width);

    public abstract void Draw(Surface surface, double width);
}

/// <summary>A drawing with its caption below.</summary>
internal sealed class Figure(Drawing drawing, string? caption = null, double widest = 1000) : Block
{
    public override double SpaceBefore => 4;

    public override double SpaceAfter => 8;

    public override double Height(double width) =>
        drawing.Height(Math.Min(width, widest)) + Caption.Height(caption, width);

    public override void Draw(Canvas canvas, Area area)
    {
        var width = Math.Min(area.Width, widest);
        var height = drawing.Height(width);
        canvas.Figure(
            drawing.AlternativeText,
            area with
            {
                Width = width,
                Height = height,
            },
            () => drawing.Draw(new Surface(canvas, area.X, area.Y), width)
        );
        Caption.Draw(canvas, caption, area with { Y = area.Y + height });
    }
}

/// <summary>The line below a figure.</summary>
internal static class Caption
{
    private const double Distance = 3;

    public static double Height(string? caption, double width) =>
        caption is null ? 0 : Distance + (Lines(caption, width).Count * Styles.Note.Leading);

    public static void Draw(Canvas canvas, string? caption, Area area)
    {
        if (caption is not null)
        {
            var lines = Lines(caption, area.Width);
            canvas.Tagged(
                PdfBlockLevelElementTag.Paragraph,
                () => TextLines.Draw(canvas, lines, Styles.Note, area.X, area.Y + Distance, false)
            );
        }
    }

    private static IReadOnlyList<string> Lines(string caption, double width) =>
        LineBreaker.Break(caption, Styles.Note, width);
}
