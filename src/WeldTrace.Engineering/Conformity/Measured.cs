using System.Globalization;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Engineering.Conformity;

/// <summary>A measured or computed value with its unit and, when known, its expanded uncertainty.</summary>
public sealed record Measured
{
    private const int FinestPlace = -6;
    private const double LargestEveryday = 1e9;

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

    /// <summary>
    /// Value, uncertainty and unit for people: the uncertainty to at most two significant digits, the value to the same
    /// decimal place (GUM 7.2.6).
    /// </summary>
    public override string ToString() =>
        ExpandedUncertainty is { } width and > 0
            ? $"{WithUncertainty(width)} {Unit}".TrimEnd()
            : $"{Figures.Format(Value)} {Unit}".TrimEnd();

    private string WithUncertainty(double width)
    {
        var shown = Figures.Format(width, 2);
        var place = LastPlaceOf(shown, width);
        var step = Math.Pow(10, place);
        var rounded = Math.Round(Value / step) * step;
        if (place is < 0 and >= FinestPlace && Math.Abs(Value) < LargestEveryday)
        {
            var format = FormattableString.Invariant($"F{-place}");
            return $"{rounded.ToString(format, CultureInfo.InvariantCulture)} ± {shown}";
        }

        var digits = rounded == 0 ? 1 : (int)Math.Floor(Math.Log10(Math.Abs(rounded))) - place + 1;
        return $"{Figures.Format(rounded, Math.Clamp(digits, 1, 15))} ± {shown}";
    }

    /// <summary>Power of ten of the last digit that is written: -2 for 0.04, 0 for 5, 1 for 210.</summary>
    private static int LastPlaceOf(string shown, double width)
    {
        var ofTwoDigits = (int)Math.Floor(Math.Log10(width)) - 1;
        var point = shown.IndexOf('.', StringComparison.Ordinal);
        return shown.Contains('×', StringComparison.Ordinal) ? ofTwoDigits
            : point >= 0 ? point + 1 - shown.Length
            : Math.Max(0, ofTwoDigits);
    }
}
