using System.Net;
using System.Text.RegularExpressions;

namespace WeldTrace.Web.Components.Figures;

/// <summary>Reads one formula from left to right and writes its MathML.</summary>
internal sealed partial class FormulaReader(string text)
{
    private const string Raised = "⁰¹²³⁴⁵⁶⁷⁸⁹ⁿ";
    private const string Plain = "0123456789n";
    private const int Deepest = 30;

    private static readonly string[] Functions = ["exp", "ln", "tan", "max", "min", "round"];

    private int _at;
    private int _depth;

    /// <summary>The whole formula; null when its parentheses do not pair or something is missing.</summary>
    public string? Read() => Row(null);

    private char Next => _at < text.Length ? text[_at] : '\0';

    private string? Row(char? closing)
    {
        FormulaRow row = new();
        _depth++;
        while (_depth < Deepest)
        {
            var isSpaced = SkipSpaces();
            if (_at == text.Length || Next == closing)
            {
                _at++;
                _depth--;
                return (_at > text.Length) == (closing is null) ? row.Markup : null;
            }

            if (Next == '/')
            {
                _at++;
                SkipSpaces();
                if (Operand() is not { } below || !row.Divide(below))
                {
                    return null;
                }
            }
            else if (Operand() is { } operand)
            {
                row.Add(operand with { IsSpaced = isSpaced });
            }
            else if (Next is '(' or ')' or '^' or '_' or '√')
            {
                return null;
            }
            else
            {
                row.Add(Sign(isSpaced));
            }
        }

        return null;
    }

    private FormulaItem Sign(bool isSpaced)
    {
        var sign = text[_at..].StartsWith("..", StringComparison.Ordinal) ? ".." : text[_at..][..1];
        _at += sign.Length;
        var kind = sign is "·" or "×" ? FormulaItemKind.Times : FormulaItemKind.Sign;
        return new FormulaItem(Element("mo", sign), kind) { IsSpaced = isSpaced };
    }

    /// <summary>A number, a symbol, a root, a sum or a group with its powers; null when something else stands here.</summary>
    private FormulaItem? Operand()
    {
        var begin = _at;
        var operand = Next switch
        {
            '(' => Group(')'),
            // A bar before a space parts, as in R(x | t).
            '|' when _at + 1 < text.Length && text[_at + 1] != ' ' => Group('|'),
            '√' => Root(),
            'Σ' => Applied(Sum()),
            _ when char.IsAsciiDigit(Next) => new FormulaItem(Element("mn", Take(Number()))),
            _ when char.IsLetter(Next) => Symbol(),
            _ => null,
        };
        var whole = operand is null ? null : Powers(operand);
        if (whole is null)
        {
            _at = begin;
        }

        return whole;
    }

    private FormulaItem? Group(char closing)
    {
        var opening = Element("mo", text[_at++].ToString());
        return Row(closing) is { } inner
            ? new FormulaItem($"<mrow>{opening}{inner}{Element("mo", closing.ToString())}</mrow>")
            {
                Inner = closing == ')' ? inner : null,
            }
            : null;
    }

    private FormulaItem? Root()
    {
        _at++;
        return Operand() is { } below
            ? new FormulaItem($"<msqrt>{below.Inner ?? below.Markup}</msqrt>")
            : null;
    }

    private string Sum()
    {
        _at++;
        return Subscribed(Element("mo", "Σ"));
    }

    private FormulaItem? Symbol()
    {
        if (Take(Word()) is { Length: > 0 } word)
        {
            return Functions.Contains(word)
                ? Applied(Element("mi", word))
                : new FormulaItem(Subscribed(Element("mtext", word)));
        }

        var letters = Take(Letters());
        var index = Take(Index());
        return letters.Length == 0 ? null
            : letters == "ln" ? Applied(Element("mi", letters))
            : index.Length > 0
                ? new FormulaItem($"<msub>{Element("mi", letters)}{Element("mn", index)}</msub>")
            : new FormulaItem(Subscribed(Element("mi", letters)));
    }

    /// <summary>A function or a sum with what it is taken of, when that follows.</summary>
    private FormulaItem Applied(string function)
    {
        var begin = _at;
        var isSpaced = SkipSpaces();
        if (Operand() is { } argument)
        {
            var gap = isSpaced ? FormulaRow.Gap : "";
            return new FormulaItem($"<mrow>{function}{gap}{argument.Markup}</mrow>");
        }

        _at = begin;
        return new FormulaItem(function);
    }

    private string Subscribed(string markup)
    {
        var below = Take(Below());
        return below.Length > 0 ? $"<msub>{markup}{Element("mtext", below[1..])}</msub>" : markup;
    }

    private FormulaItem? Powers(FormulaItem item)
    {
        var raised = Raised.Contains(Next, StringComparison.Ordinal) && _at < text.Length;
        if (raised)
        {
            var power = Element(
                "mn",
                Plain[Raised.IndexOf(text[_at++], StringComparison.Ordinal)].ToString()
            );
            return new FormulaItem($"<msup>{item.Markup}{power}</msup>");
        }

        if (Next != '^')
        {
            return item;
        }

        _at++;
        return Operand() is { } exponent
            ? new FormulaItem(
                $"<msup>{item.Markup}<mrow>{exponent.Inner ?? exponent.Markup}</mrow></msup>"
            )
            : null;
    }

    private bool SkipSpaces()
    {
        var begin = _at;
        while (Next == ' ')
        {
            _at++;
        }

        return _at > begin;
    }

    private string Take(Regex pattern)
    {
        var match = pattern.Match(text, _at);
        _at += match.Length;
        return match.Value;
    }

    private static string Element(string name, string content) =>
        $"<{name}>{WebUtility.HtmlEncode(content)}</{name}>";

    // Thousands are parted by a space: 4 266 920.
    [GeneratedRegex(@"\G(\d{1,3}( \d{3})+(?!\d)|\d+(\.\d+)?)")]
    private static partial Regex Number();

    [GeneratedRegex(@"\G[a-zA-Z]{3,}(-[a-z]+)*")]
    private static partial Regex Word();

    [GeneratedRegex(@"\G(?!Σ)\p{L}(?<!ⁿ)((?![Σⁿ])\p{L})*'?")]
    private static partial Regex Letters();

    [GeneratedRegex(@"\G\d[a-z\d]*")]
    private static partial Regex Index();

    [GeneratedRegex(@"\G_[\p{L}\d]+(,[\p{L}\d]+)*")]
    private static partial Regex Below();
}
