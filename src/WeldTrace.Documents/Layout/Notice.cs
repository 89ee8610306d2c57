using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>A notice set apart by a heavy bar at its left, for cautions and whatever is unchecked.</summary>
internal sealed class Notice(string title, IReadOnlyList<string> paragraphs, MarkShape shape)
    : Block
{
    private const double Inset = 12;
    private const double Padding = 6;

    public override double SpaceBefore => 8;

    public override double SpaceAfter => 10;

    public override double Height(double width) =>
        (2 * Padding)
        + Styles.Strong.Leading
        + paragraphs.Sum(text => 2 + (Lines(text, width).Count * Styles.Body.Leading));

    public override void Draw(Canvas canvas, Area area)
    {
        canvas.Decoration(() =>
        {
            canvas.Fill(area with { Width = 3 }, Tone.Ink);
            canvas.Rule(area.X, area.Y, area.Right, area.Y, 0.4, Tone.Rule);
            canvas.Rule(area.X, area.Bottom, area.Right, area.Bottom, 0.4, Tone.Rule);
        });
        var x = area.X + Inset;
        var y = area.Y + Padding;
        canvas.Tagged(
            PdfBlockLevelElementTag.Paragraph,
            () => StateText.Draw(canvas, new StateMark(title, shape), Styles.Strong, x, y)
        );
        y += Styles.Strong.Leading;
        foreach (var text in paragraphs)
        {
            y += 2;
            var lines = Lines(text, area.Width);
            var top = y;
            canvas.Tagged(
                PdfBlockLevelElementTag.Paragraph,
                () => TextLines.Draw(canvas, lines, Styles.Body, x, top, struck: false)
            );
            y += lines.Count * Styles.Body.Leading;
        }
    }

    public override void Place(Flow flow)
    {
        if (Height(Flow.Width) <= PageGeometry.TextHeight)
        {
            base.Place(flow);
            return;
        }

        flow.Place([new Heading(title, 4), .. paragraphs.Select(text => new Paragraph(text))]);
    }

    private static IReadOnlyList<string> Lines(string text, double width) =>
        LineBreaker.Break(text, Styles.Body, width - Inset - 6);
}
