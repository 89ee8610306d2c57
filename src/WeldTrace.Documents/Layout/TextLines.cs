namespace WeldTrace.Documents.Layout;

/// <summary>Draws lines below each other, struck through where the record was corrected.</summary>
internal static class TextLines
{
    public static void Draw(
        Canvas canvas,
        IReadOnlyList<string> lines,
        TextStyle style,
        double x,
        double y,
        bool struck
    )
    {
        foreach (var line in lines)
        {
            canvas.Text(line, style, x, y);
            if (struck)
            {
                Strike(canvas, style, x, style.Width(line), y);
            }

            y += style.Leading;
        }
    }

    public static void Strike(Canvas canvas, TextStyle style, double x, double width, double y)
    {
        var middle = y + style.Baseline - (0.25 * style.Size);
        canvas.Rule(x, middle, x + width, middle, 0.6, Tone.Ink);
    }
}

/// <summary>The word of a state with its shape before it.</summary>
internal static class StateText
{
    public static double Indent(TextStyle style) => style.Size * 1.15;

    public static double Width(StateMark state, TextStyle style) =>
        Indent(style) + style.Width(Word(state, style));

    public static void Draw(
        Canvas canvas,
        StateMark state,
        TextStyle style,
        double x,
        double y,
        bool struck = false
    )
    {
        DrawShape(canvas, state.Shape, style, x, y);
        canvas.Text(Word(state, style), style, x + Indent(style), y);
        if (struck)
        {
            TextLines.Strike(canvas, style, x, Width(state, style), y);
        }
    }

    public static void DrawShape(
        Canvas canvas,
        MarkShape shape,
        TextStyle style,
        double x,
        double y
    )
    {
        var radius = style.Size * 0.36;
        var middle = y + style.Baseline - (0.33 * style.Size);
        Mark.Draw(canvas.Graphics, shape, x + radius, middle, radius);
    }

    private static string Word(StateMark state, TextStyle style) =>
        LineBreaker.Fit(state.Word, style, 160);
}
