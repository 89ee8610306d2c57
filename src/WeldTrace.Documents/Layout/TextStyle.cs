namespace WeldTrace.Documents.Layout;

/// <summary>How dark ink is printed; all tones stay apart in black and white.</summary>
internal enum Tone
{
    Ink,
    Quiet,
    Rule,
    Band,
    Tint,
    Paper,
}

/// <summary>A face with size and line distance, both in points.</summary>
internal sealed record TextStyle(FontFace Face, double Size, double Leading, Tone Tone = Tone.Ink)
{
    /// <summary>Cap height of Source Sans 3 is 0.66 em; capitals stand in the middle of the line.</summary>
    public double Baseline => (Leading + (0.66 * Size)) / 2;

    public double Width(ReadOnlySpan<char> text) => Face.Width(text, Size);
}

/// <summary>The styles of every document.</summary>
internal static class Styles
{
    public static readonly TextStyle Title = new(Typefaces.SemiBold, 21, 26);
    public static readonly TextStyle Site = new(Typefaces.SemiBold, 10, 14);
    public static readonly TextStyle Section = new(Typefaces.SemiBold, 13.5, 18);
    public static readonly TextStyle Record = new(Typefaces.SemiBold, 10.5, 14.5);
    public static readonly TextStyle Part = new(Typefaces.SemiBold, 9, 12.5);
    public static readonly TextStyle Body = new(Typefaces.Regular, 9, 12.5);
    public static readonly TextStyle Strong = new(Typefaces.SemiBold, 9, 12.5);
    public static readonly TextStyle Note = new(Typefaces.Italic, 8.5, 11.5);
    public static readonly TextStyle Label = new(Typefaces.Regular, 8, 12.5, Tone.Quiet);
    public static readonly TextStyle Cell = new(Typefaces.Regular, 8.5, 11.5);
    public static readonly TextStyle HeadCell = new(Typefaces.SemiBold, 8, 11);
    public static readonly TextStyle Small = new(Typefaces.Regular, 7.5, 10, Tone.Quiet);
    public static readonly TextStyle Drawing = new(Typefaces.Regular, 7, 9);
    public static readonly TextStyle DrawingStrong = new(Typefaces.SemiBold, 7, 9);
}
