using System.Net;

namespace WeldTrace.Web.Components.Figures;

/// <summary>
/// Formula text of a working set as mathematics (MathML): fractions, roots, powers and subscripts. What the text says stays the same; a
/// part that cannot be read is left as text.
/// </summary>
public static class FormulaMarkup
{
    /// <summary>The formulas of a text: parted by semicolons that stand in no parentheses.</summary>
    public static IReadOnlyList<string> Parts(string formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        var (depth, start) = (0, 0);
        List<string> parts = [];
        for (var i = 0; i <= formula.Length; i++)
        {
            if (i == formula.Length || (formula[i] == ';' && depth == 0))
            {
                parts.Add(formula[start..i].Trim());
                start = i + 1;
            }
            else
            {
                depth += formula[i] switch
                {
                    '(' => 1,
                    ')' => -1,
                    _ => 0,
                };
            }
        }

        return [.. parts.Where(part => part.Length > 0)];
    }

    /// <summary>A <c>math</c> element with the text itself as its alternative, or the encoded text where it cannot be read.</summary>
    public static string Write(string part)
    {
        ArgumentNullException.ThrowIfNull(part);
        var text = WebUtility.HtmlEncode(part);
        return part.Length > 0 && new FormulaReader(part).Read() is { } row
            ? $"<math alttext=\"{text}\">{row}</math>"
            : text;
    }
}
