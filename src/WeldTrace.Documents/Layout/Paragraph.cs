using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>Running text; it may be divided between lines.</summary>
internal sealed class Paragraph(
    string? text,
    TextStyle? style = null,
    bool struck = false,
    bool keepsWithNext = false
) : Block
{
    private readonly TextStyle _style = style ?? Styles.Body;

    public override bool KeepsWithNext => keepsWithNext;

    public override double Height(double width) => Lines(width).Count * _style.Leading;

    public override double StartHeight(double width) =>
        Math.Min(2, Lines(width).Count) * _style.Leading;

    public override void Draw(Canvas canvas, Area area) =>
        canvas.Tagged(
            PdfBlockLevelElementTag.Paragraph,
            () => TextLines.Draw(canvas, Lines(area.Width), _style, area.X, area.Y, struck)
        );

    public override void Place(Flow flow)
    {
        var lines = Lines(Flow.Width);
        flow.Paint(canvas => canvas.Open(PdfBlockLevelElementTag.Paragraph));
        foreach (var line in lines)
        {
            flow.Require(_style.Leading);
            var area = flow.Take(_style.Leading);
            flow.Paint(canvas => TextLines.Draw(canvas, [line], _style, area.X, area.Y, struck));
        }

        flow.Paint(canvas => canvas.Close());
    }

    private IReadOnlyList<string> Lines(double width) => LineBreaker.Break(text, _style, width);
}
