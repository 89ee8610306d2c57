using System.Globalization;
using System.Text;

namespace WeldTrace.Documents.Layout;

/// <summary>Makes any text safe to print: what has no glyph or would not be seen is spelt out as its code point.</summary>
internal static class PrintableText
{
    public const string Missing = "–";

    /// <summary>Text with line feeds as the only control characters; nothing in it is invisible or without a glyph.</summary>
    public static string From(string? text, FontFace face)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return Missing;
        }

        var printable = new StringBuilder(text.Length);
        foreach (var character in Composed(text).EnumerateRunes())
        {
            Append(printable, character, face);
        }

        return printable.ToString();
    }

    /// <summary>The same on one line.</summary>
    public static string OnOneLine(string? text, FontFace face) =>
        From(text, face).Replace('\n', ' ').Replace('\u00A0', ' ');

    private static string Composed(string text)
    {
        var wellFormed = string.Concat(text.EnumerateRunes().Select(rune => rune.ToString()));
        return wellFormed.ReplaceLineEndings("\n").Normalize(NormalizationForm.FormC);
    }

    private static void Append(StringBuilder printable, Rune character, FontFace face)
    {
        switch (character.Value)
        {
            case '\n':
                printable.Append('\n');
                break;
            case '\t':
                printable.Append(' ');
                break;
            case 0x2007 or 0x2009 or 0x202F:
                printable.Append('\u00A0');
                break;
            case 0x2010 or 0x2011:
                printable.Append('-');
                break;
            case 0x03BC:
                printable.Append('µ');
                break;
            default:
                AppendVisible(printable, character, face);
                break;
        }
    }

    private static void AppendVisible(StringBuilder printable, Rune character, FontFace face)
    {
        if (IsSeen(character) && face.Covers(character))
        {
            printable.Append(character.ToString());
        }
        else
        {
            printable.Append(CultureInfo.InvariantCulture, $"[U+{character.Value:X4}]");
        }
    }

    private static bool IsSeen(Rune character) =>
        Rune.GetUnicodeCategory(character)
            is not (
                UnicodeCategory.Control
                or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator
                or UnicodeCategory.NonSpacingMark
                or UnicodeCategory.EnclosingMark
            );
}
