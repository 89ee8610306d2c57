using System.Globalization;
using System.Text;

namespace WeldTrace.Verify;

/// <summary>Makes text from a hostile bundle safe to print on a terminal.</summary>
internal static class PlainText
{
    public static string Of(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            var category = Rune.GetUnicodeCategory(rune);
            if (
                category
                is UnicodeCategory.Control
                    or UnicodeCategory.Format
                    or UnicodeCategory.LineSeparator
                    or UnicodeCategory.ParagraphSeparator
            )
            {
                plain.Append(CultureInfo.InvariantCulture, $"\\u{{{rune.Value:x}}}");
            }
            else
            {
                plain.Append(rune);
            }
        }
        return plain.ToString();
    }
}
