using System.Globalization;
using PdfSharp.UniversalAccessibility;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Book;

/// <summary>What the contents tell of one heading.</summary>
/// <param name="Title">The heading.</param>
/// <param name="Level">1 for a chapter, 2 for its parts.</param>
/// <param name="Page">Page, from 1.</param>
internal sealed record ContentsEntry(string Title, int Level, int Page);

/// <summary>A line of the contents, which leads to its page.</summary>
internal sealed class ContentsLine(ContentsEntry entry) : Block
{
    private const double Indent = 16;
    private const double NumberRoom = 40;

    private readonly TextStyle _style = entry.Level == 1 ? Styles.Strong : Styles.Body;

    public override double SpaceBefore => entry.Level == 1 ? 6 : 0;

    public override double SpaceAfter => 0;

    public override double Height(double width) => _style.Leading + 2;

    public override void Draw(Canvas canvas, Area area)
    {
        var number = entry.Page.ToString(CultureInfo.InvariantCulture);
        var left = area.X + ((entry.Level - 1) * Indent);
        var title = LineBreaker.Fit(entry.Title, _style, area.Right - NumberRoom - left);
        canvas.Decoration(() =>
            canvas.Rule(
                area.X,
                area.Y + _style.Leading + 1,
                area.Right,
                area.Y + _style.Leading + 1,
                0.3,
                Tone.Rule
            )
        );
        canvas.Tagged(
            PdfBlockLevelElementTag.Paragraph,
            () =>
                canvas.LinkWithin(
                    area,
                    entry.Page,
                    $"{title}, page {number}",
                    () =>
                    {
                        canvas.Text(title, _style, left, area.Y);
                        canvas.TextRight(number, _style, area.Right, area.Y);
                    }
                )
        );
    }
}
