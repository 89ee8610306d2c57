using System.Buffers;

namespace WeldTrace.Documents.Layout;

/// <summary>Cuts text into lines no wider than the column; a word longer than the column is cut where it must be.</summary>
internal static class LineBreaker
{
    private static readonly SearchValues<char> GoodEnds = SearchValues.Create("/-–_.&?=,:");

    public static IReadOnlyList<string> Break(string? text, TextStyle style, double width)
    {
        var lines = new List<string>();
        foreach (var paragraph in PrintableText.From(text, style.Face).Split('\n'))
        {
            BreakParagraph(paragraph, style, width, lines);
        }

        return lines;
    }

    /// <summary>The text on one line, shortened with an ellipsis when it is too wide.</summary>
    public static string Fit(string? text, TextStyle style, double width)
    {
        var line = PrintableText.OnOneLine(text, style.Face);
        if (style.Width(line) <= width)
        {
            return line;
        }

        var room = width - style.Width("…");
        return string.Concat(line.AsSpan(0, FittingLength(line, style, room)), "…");
    }

    private static void BreakParagraph(
        string paragraph,
        TextStyle style,
        double width,
        List<string> lines
    )
    {
        var line = string.Empty;
        foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (style.Width(longer) <= width)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(Finished(line));
            }

            line = CutLongWord(word, style, width, lines);
        }

        lines.Add(Finished(line));
    }

    private static string CutLongWord(
        string word,
        TextStyle style,
        double width,
        List<string> lines
    )
    {
        var rest = word.AsSpan();
        for (
            var fitting = FittingLength(rest, style, width);
            fitting < rest.Length;
            fitting = FittingLength(rest, style, width)
        )
        {
            fitting = Math.Max(1, fitting);
            var good = rest[..fitting].LastIndexOfAny(GoodEnds) + 1;
            var cut = good > fitting / 2 ? good : fitting;
            if (cut == rest.Length)
            {
                break;
            }

            lines.Add(Finished(rest[..cut].ToString()));
            rest = rest[cut..];
        }

        return rest.ToString();
    }

    private static int FittingLength(ReadOnlySpan<char> word, TextStyle style, double width)
    {
        var used = 0.0;
        var at = 0;
        while (at < word.Length)
        {
            var step = char.IsHighSurrogate(word[at]) && at + 1 < word.Length ? 2 : 1;
            used += style.Width(word.Slice(at, step));
            if (used > width)
            {
                break;
            }

            at += step;
        }

        return at;
    }

    // The space and the no-break space share a glyph; only one of them can be read back from the file.
    private static string Finished(string line) => line.Replace('\u00A0', ' ');
}
