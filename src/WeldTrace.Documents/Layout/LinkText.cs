using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>A web address that is printed and can be followed.</summary>
internal sealed class LinkText(string address) : Block
{
    private static readonly TextStyle Style = Styles.Small;

    public override double Height(double width) => Lines(width).Count * Style.Leading;

    public override void Draw(Canvas canvas, Area area) =>
        canvas.Tagged(
            PdfBlockLevelElementTag.Paragraph,
            () => canvas.Link(area, address, () => DrawLines(canvas, area))
        );

    private void DrawLines(Canvas canvas, Area area) =>
        TextLines.Draw(canvas, Lines(area.Width), Style, area.X, area.Y, struck: false);

    private IReadOnlyList<string> Lines(double width) => LineBreaker.Break(address, Style, width);
}
