using System.Text;

namespace WeldTrace.Web.Components.Figures;

/// <summary>What an item of a formula is, as far as a fraction bar asks.</summary>
internal enum FormulaItemKind
{
    /// <summary>May stand above a fraction bar.</summary>
    Operand,

    /// <summary>Sign of multiplication: what stands before it goes above the bar too.</summary>
    Times,

    /// <summary>Ends what stands above the bar.</summary>
    Sign,

    /// <summary>A fraction; a second one beside it stays beside it.</summary>
    Fraction,
}

/// <summary>One item of a row.</summary>
/// <param name="Markup">Its MathML.</param>
/// <param name="Kind">What it is.</param>
internal sealed record FormulaItem(string Markup, FormulaItemKind Kind = FormulaItemKind.Operand)
{
    /// <summary>MathML without the parentheses, which a bar or a root makes needless; null without any.</summary>
    public string? Inner { get; init; }

    public bool IsSpaced { get; init; }
}

/// <summary>A row of items that grows from left to right.</summary>
internal sealed class FormulaRow
{
    public const string Gap = "<mspace width=\"0.3em\"></mspace>";

    private readonly List<FormulaItem> _items = [];

    public string Markup
    {
        get
        {
            StringBuilder row = new("<mrow>");
            for (var i = 0; i < _items.Count; i++)
            {
                row.Append(i > 0 && _items[i].IsSpaced && !IsSign(i) && !IsSign(i - 1) ? Gap : "");
                row.Append(_items[i].Markup);
            }

            return row.Append("</mrow>").ToString();
        }
    }

    public void Add(FormulaItem item) => _items.Add(item);

    /// <summary>Draws a bar below the product at the end of the row; false when there is none.</summary>
    public bool Divide(FormulaItem below)
    {
        var from = _items.Count - 1;
        if (from < 0 || _items[from].Kind != FormulaItemKind.Operand)
        {
            return false;
        }

        while (Before(from) is { } before)
        {
            from = before;
        }

        var above = _items[from..];
        var product = above is [{ Inner: { } inner }]
            ? inner
            : string.Concat(above.Select(i => i.Markup));
        var isSpaced = _items[from].IsSpaced;
        _items.RemoveRange(from, above.Count);
        _items.Add(
            new FormulaItem(
                $"<mfrac><mrow>{product}</mrow><mrow>{below.Inner ?? below.Markup}</mrow></mfrac>",
                FormulaItemKind.Fraction
            )
            {
                IsSpaced = isSpaced,
            }
        );
        return true;
    }

    // The place of the factor before this one; null when the product begins here.
    private int? Before(int place) =>
        place >= 2
        && _items[place - 1].Kind == FormulaItemKind.Times
        && _items[place - 2].Kind == FormulaItemKind.Operand
            ? place - 2
        : place >= 1 && !_items[place].IsSpaced && _items[place - 1].Kind == FormulaItemKind.Operand
            ? place - 1
        : null;

    private bool IsSign(int place) =>
        _items[place].Kind is FormulaItemKind.Sign or FormulaItemKind.Times;
}
