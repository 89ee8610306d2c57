using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>Blocks below each other that stay together.</summary>
internal sealed class Stack(IReadOnlyList<Block> blocks) : Block
{
    public override double Height(double width)
    {
        var height = 0.0;
        for (var i = 0; i < blocks.Count; i++)
        {
            height += blocks[i].Height(width) + SpaceBelow(i);
        }

        return height;
    }

    public override void Draw(Canvas canvas, Area area)
    {
        var y = area.Y;
        for (var i = 0; i < blocks.Count; i++)
        {
            var height = blocks[i].Height(area.Width);
            blocks[i].Draw(canvas, area with { Y = y, Height = height });
            y += height + SpaceBelow(i);
        }
    }

    public override void Place(Flow flow)
    {
        if (Height(Flow.Width) <= PageGeometry.TextHeight)
        {
            base.Place(flow);
        }
        else
        {
            flow.Place(blocks);
        }
    }

    private double SpaceBelow(int i) =>
        i == blocks.Count - 1 ? 0 : Math.Max(blocks[i].SpaceAfter, blocks[i + 1].SpaceBefore);
}

/// <summary>Two blocks beside each other; below each other where they do not fit on one page.</summary>
internal sealed class SideBySide(Block left, Block right, double leftShare) : Block
{
    private const double Gutter = 18;

    public override double SpaceAfter => 8;

    public override double StartHeight(double width) =>
        FitsOnePage(width) ? Height(width) : left.StartHeight(width);

    public override double Height(double width) =>
        Math.Max(left.Height(LeftWidth(width)), right.Height(RightWidth(width)));

    public override void Draw(Canvas canvas, Area area)
    {
        var leftWidth = LeftWidth(area.Width);
        var rightWidth = RightWidth(area.Width);
        left.Draw(canvas, area with { Width = leftWidth });
        right.Draw(canvas, area with { X = area.Right - rightWidth, Width = rightWidth });
    }

    public override void Place(Flow flow)
    {
        if (FitsOnePage(Flow.Width))
        {
            base.Place(flow);
        }
        else
        {
            flow.Place([left, right]);
        }
    }

    private bool FitsOnePage(double width) => Height(width) <= PageGeometry.TextHeight;

    private static double LeftWidthOf(double width, double share) => (width - Gutter) * share;

    private double LeftWidth(double width) => LeftWidthOf(width, leftShare);

    private double RightWidth(double width) => width - Gutter - LeftWidth(width);
}

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

/// <summary>Ruled room for one signature by hand.</summary>
internal sealed class SignatureBlock(string role) : Block
{
    private static readonly (string Label, double From, double To)[] Fields =
    [
        ("name in print", 0.24, 0.52),
        ("signature", 0.55, 0.82),
        ("date", 0.85, 1),
    ];

    public override double Height(double width) => 36;

    public override void Draw(Canvas canvas, Area area) =>
        canvas.Tagged(
            PdfBlockLevelElementTag.Paragraph,
            () =>
            {
                var line = area.Y + 24;
                var label = LineBreaker.Fit(role, Styles.Body, area.Width * 0.22);
                canvas.Text(label, Styles.Body, area.X, line - 11);
                foreach (var (name, from, to) in Fields)
                {
                    var left = area.X + (area.Width * from);
                    canvas.Rule(left, line, area.X + (area.Width * to), line, 0.5, Tone.Ink);
                    canvas.Text(name, Styles.Small, left, line + 1);
                }
            }
        );
}
