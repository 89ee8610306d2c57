using WeldTrace.Documents.Drawings;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents.Labels;

/// <summary>Labels beside each other with cutting marks; the code stands left, mark and lines right of it.</summary>
internal sealed class LabelRow(IReadOnlyList<Label> labels, int columns) : Block
{
    private const double RowHeight = 88;
    private const double QrWidth = 76;
    private const double Edge = 6;

    public override double SpaceAfter => 0;

    public override double Height(double width) => RowHeight;

    public override void Draw(Canvas canvas, Area area)
    {
        var width = area.Width / columns;
        for (var i = 0; i < labels.Count; i++)
        {
            DrawLabel(canvas, labels[i], area with { X = area.X + (i * width), Width = width });
        }
    }

    private static void DrawLabel(Canvas canvas, Label label, Area area)
    {
        canvas.Decoration(() => DrawCuts(canvas, area));
        var qr = new QrDrawing(label.Code);
        var corner = new Area(
            area.X + Edge,
            area.Y + ((area.Height - QrWidth) / 2),
            QrWidth,
            QrWidth
        );
        canvas.Figure(
            qr.AlternativeText,
            corner,
            () => qr.Draw(new Surface(canvas, corner.X, corner.Y), QrWidth)
        );
        var text = corner.Right + Edge;
        var room = area.Right - text - Edge;
        canvas.Tagged(
            PdfSharp.UniversalAccessibility.PdfBlockLevelElementTag.Paragraph,
            () => DrawText(canvas, label, text, area.Y + 16, room)
        );
    }

    private static void DrawText(Canvas canvas, Label label, double x, double y, double room)
    {
        var mark = LineBreaker.Fit(label.Mark, Styles.Section, room);
        canvas.Text(mark, Styles.Section, x, y);
        var below = y + Styles.Section.Leading;
        foreach (var line in label.Lines)
        {
            canvas.Text(LineBreaker.Fit(line, Styles.Small, room), Styles.Small, x, below);
            below += Styles.Small.Leading;
        }
    }

    private static void DrawCuts(Canvas canvas, Area area)
    {
        const double tick = 5;
        foreach (var x in new[] { area.X, area.Right })
        {
            foreach (var y in new[] { area.Y, area.Bottom })
            {
                canvas.Rule(x - tick, y, x + tick, y, 0.3, Tone.Rule);
                canvas.Rule(x, y - tick, x, y + tick, 0.3, Tone.Rule);
            }
        }
    }
}
