using System.Globalization;

namespace WeldTrace.Engineering;

/// <summary>Writes numbers for people: significant digits, no exponent in the everyday range.</summary>
public static class Figures
{
    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    /// <summary>Writes a number, culture independent.</summary>
    /// <param name="value">Any number.</param>
    /// <param name="significantDigits">1 to 15.</param>
    /// <returns>For instance <c>0.00176667</c>, <c>241.185</c> or <c>1.18835 × 10⁻¹⁰</c>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number of digits is outside 1 to 15.</exception>
    public static string Format(double value, int significantDigits = 6)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(significantDigits, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(significantDigits, 15);
        if (value == 0 || !double.IsFinite(value))
        {
            return value.ToString(CultureInfo.InvariantCulture);
        }

        var digits = value.ToString($"G{significantDigits}", CultureInfo.InvariantCulture);
        var cut = digits.IndexOf('E', StringComparison.Ordinal);
        if (cut < 0)
        {
            return digits;
        }

        var isEveryday = Math.Abs(value) is >= 1e-5 and < 1e9;
        return isEveryday
            ? decimal.Parse(digits, NumberStyles.Float, CultureInfo.InvariantCulture)
                .ToString(CultureInfo.InvariantCulture)
            : TimesTenTo(
                digits[..cut],
                int.Parse(digits.AsSpan(cut + 1), CultureInfo.InvariantCulture)
            );
    }

    /// <summary>Writes a number as a power of ten.</summary>
    /// <param name="digits">What the power is multiplied by, as text.</param>
    /// <param name="exponent">Any exponent.</param>
    /// <returns>For instance <c>4.0 × 10⁻⁵</c>.</returns>
    public static string TimesTenTo(string digits, int exponent) =>
        $"{digits} × 10{(exponent < 0 ? "⁻" : "")}"
        + string.Concat(
            Math.Abs(exponent)
                .ToString(CultureInfo.InvariantCulture)
                .Select(digit => Superscripts[digit - '0'])
        );
}
