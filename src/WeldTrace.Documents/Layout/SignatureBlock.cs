using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

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
