using WeldTrace.Engineering.Units;

namespace WeldTrace.Engineering.Conformity;

/// <summary>A measured or computed value with its unit and, when known, its expanded uncertainty.</summary>
public sealed record Measured
{
    /// <summary>Makes a measured value.</summary>
    /// <param name="value">Finite value in <paramref name="unit"/>.</param>
    /// <param name="unit">Unit symbol of the catalogue; empty for a plain number.</param>
    /// <param name="expandedUncertainty">
    /// Half-width of the interval in the same unit (usually coverage factor 2); zero or more; null when it is not known.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the uncertainty is negative.</exception>
    /// <exception cref="ArgumentException">The unit is not known.</exception>
    public Measured(double value, string unit, double? expandedUncertainty = null)
    {
        Value = Quantities.Finite.Require(value);
        Unit = UnitCatalogue.Get(unit).Symbol;
        if (expandedUncertainty is { } width)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(
                Quantities.Finite.Require(width),
                nameof(expandedUncertainty)
            );
        }

        ExpandedUncertainty = expandedUncertainty;
    }

    /// <summary>The value in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>Unit symbol.</summary>
    public string Unit { get; }

    /// <summary>Half-width of the interval in <see cref="Unit"/>; null when it is not known.</summary>
    public double? ExpandedUncertainty { get; }

    /// <summary>The same value in another unit of its kind.</summary>
    /// <exception cref="ArgumentException">The unit is not known or of another kind.</exception>
    public Measured In(string unit)
    {
        var (from, to) = (UnitCatalogue.Get(Unit), UnitCatalogue.Get(unit));
        var width = ExpandedUncertainty * from.Factor / to.Factor;
        return new(from.To(to, Value), to.Symbol, width);
    }

    /// <summary>
    /// For a quantity that cannot be negative, such as a loss of gas: a negative value is an error of at least its own
    /// size, so it becomes zero with an expanded uncertainty of at least that size.
    /// </summary>
    public Measured NotBelowZero() =>
        Value >= 0 ? this : new(0, Unit, Math.Max(ExpandedUncertainty ?? 0, -Value));

    /// <summary>Value, uncertainty and unit for people.</summary>
    public override string ToString()
    {
        var width = ExpandedUncertainty is { } u ? $" ± {Figures.Format(u, 2)}" : "";
        return $"{Figures.Format(Value)}{width} {Unit}".TrimEnd();
    }
}
