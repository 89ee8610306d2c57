using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Engineering.Conformity;

/// <summary>
/// A limit as it is written in a document: the digits after its decimal sign say to which place a value is rounded
/// before it is compared.
/// </summary>
public sealed record WrittenLimit
{
    private WrittenLimit(double value, int? decimals, string unit) =>
        (Value, Decimals, Unit) = (value, decimals, UnitCatalogue.Get(unit).Symbol);

    /// <summary>The limit in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>Written decimals, 0 to 28; null when values are compared without rounding.</summary>
    public int? Decimals { get; }

    /// <summary>Unit symbol.</summary>
    public string Unit { get; }

    /// <summary>A limit with the decimals that the number carries: <c>0.50m</c> has two.</summary>
    /// <exception cref="ArgumentException">The unit is not known.</exception>
    public static WrittenLimit Of(decimal value, string unit) =>
        new((double)value, value.Scale, unit);

    /// <summary>A limit from its written text, decimal point, for instance <c>0.50</c> or <c>1.0E-3</c>.</summary>
    /// <exception cref="FormatException">The text is no number.</exception>
    /// <exception cref="OverflowException">The number is larger than a decimal number can be.</exception>
    /// <exception cref="ArgumentException">The unit is not known.</exception>
    public static WrittenLimit Parse(string text, string unit) =>
        Of(decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture), unit);

    /// <summary>Reads a limit that a person has written; false when the text is no number or the unit is not known.</summary>
    public static bool TryParse(
        string? text,
        string? unit,
        [NotNullWhen(true)] out WrittenLimit? limit
    )
    {
        var isNumber = decimal.TryParse(
            text,
            NumberStyles.Float,
            CultureInfo.InvariantCulture,
            out var value
        );
        limit =
            isNumber && UnitCatalogue.TryFind(unit, out var known) ? Of(value, known.Symbol) : null;
        return limit is not null;
    }

    /// <summary>A limit without written decimals, such as a computed one; nothing is rounded.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    /// <exception cref="ArgumentException">The unit is not known.</exception>
    public static WrittenLimit Exact(double value, string unit) =>
        new(Quantities.Finite.Require(value), null, unit);

    /// <summary>The value rounded to the written decimals; see <see cref="Comparison"/> for the rule.</summary>
    public double Round(double valueInUnit)
    {
        const double largest = 7.9e27;
        return Decimals is not { } decimals || Math.Abs(valueInUnit) > largest
            ? valueInUnit
            : (double)Math.Round((decimal)valueInUnit, decimals, MidpointRounding.ToEven);
    }

    /// <summary>Limit and unit as written.</summary>
    public override string ToString()
    {
        var digits = Decimals is { } decimals
            ? Value.ToString($"F{decimals}", CultureInfo.InvariantCulture)
            : Figures.Format(Value);
        return $"{digits} {Unit}".TrimEnd();
    }
}
