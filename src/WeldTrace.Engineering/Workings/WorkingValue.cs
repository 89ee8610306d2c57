namespace WeldTrace.Engineering;

/// <summary>One figure of a working: an input, an intermediate value or a result.</summary>
/// <param name="Symbol">Symbol used in the formula text, for instance <c>R</c>.</param>
/// <param name="Name">Name in words.</param>
/// <param name="Value">The value in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit symbol; empty for a plain number.</param>
public sealed record WorkingValue(string Symbol, string Name, double Value, string Unit)
{
    /// <summary>Value and unit with at most six significant digits, culture independent.</summary>
    public string Text =>
        Unit.Length == 0 ? Figures.Format(Value) : $"{Figures.Format(Value)} {Unit}";
}
