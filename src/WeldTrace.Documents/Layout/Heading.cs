using PdfSharp.UniversalAccessibility;

namespace WeldTrace.Documents.Layout;

/// <summary>A heading of level 1 to 3 with its bookmark; a state may stand at its right end, struck where another one holds now.</summary>
internal sealed class Heading(
    string text,
    int level,
    StateMark? state = null,
    bool struck = false,
    StateMark? now = null
) : Block
{
    private const int MostLines = 12;
    private const double StateGap = 12;

    private readonly IReadOnlyList<StateMark> _states =
    [
        .. new[] { state, now }.OfType<StateMark>(),
    ];

    public string Text => text;

    public int Level => level;

    private readonly TextStyle _style = level switch
    {
        1 => Styles.Title,
        2 => Styles.Section,
        3 => Styles.Record,
        _ => Styles.Part,
    };

    public override bool KeepsWithNext => true;

    public override double SpaceBefore =>
        level switch
        {
            1 => 0,
            2 => 20,
            3 => 14,
            _ => 8,
        };

    public override double SpaceAfter => level <= 2 ? 6 : 3;

    private double RuleRoom => level == 2 ? 5 : 0;

    public override double Height(double width) => RuleRoom + (Lines(width).Count * _style.Leading);

    public override void Draw(Canvas canvas, Area area)
    {
        if (level == 2)
        {
            canvas.Decoration(() => canvas.Rule(area.X, area.Y, area.Right, area.Y, 0.8, Tone.Ink));
        }

        var lines = Lines(area.Width);
        if (level <= 3)
        {
            canvas.Bookmark(string.Join(' ', lines), level, area.Y);
        }

        canvas.Tagged(Tag, () => DrawLines(canvas, lines, area));
    }

    private PdfBlockLevelElementTag Tag =>
        level switch
        {
            1 => PdfBlockLevelElementTag.Heading1,
            2 => PdfBlockLevelElementTag.Heading2,
            3 => PdfBlockLevelElementTag.Heading3,
            _ => PdfBlockLevelElementTag.Heading4,
        };

    private void DrawLines(Canvas canvas, IReadOnlyList<string> lines, Area area)
    {
        var y = area.Y + RuleRoom;
        TextLines.Draw(canvas, lines, _style, area.X, y, struck);
        var x = area.Right - StatesWidth + StateGap;
        foreach (var (place, mark) in _states.Index())
        {
            var isStruck = now is not null && place < _states.Count - 1;
            StateText.Draw(
                canvas,
                mark,
                Styles.Strong with
                {
                    Leading = _style.Leading,
                },
                x,
                y,
                isStruck
            );
            x += StateText.Width(mark, Styles.Strong) + StateGap;
        }
    }

    private double StatesWidth => _states.Sum(s => StateText.Width(s, Styles.Strong) + StateGap);

    private IReadOnlyList<string> Lines(double width)
    {
        var lines = LineBreaker.Break(text, _style, width - StatesWidth);
        return lines.Count <= MostLines ? lines : [.. lines.Take(MostLines - 1), "…"];
    }
}
