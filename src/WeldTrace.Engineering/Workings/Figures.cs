using System.Globalization;

namespace WeldTrace.Engineering;

/// <summary>Writes numbers for people: significant digits, no exponent in the everyday range.</summary>
public static class Figures
{
    /// <summary>Writes a number, culture independent.</summary>
    /// <param name="value">Any number.</param>
    /// <param name="significantDigits">1 to 15.</param>
    /// <returns>For instance <c>0.00176667</c>, <c>241.185</c> or <c>1.18835E-10</c>.</returns>
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
        var isEveryday = Math.Abs(value) is >= 1e-5 and < 1e9;
        return isEveryday && digits.Contains('E', StringComparison.Ordinal)
            ? decimal.Parse(digits, NumberStyles.Float, CultureInfo.InvariantCulture)
                .ToString(CultureInfo.InvariantCulture)
            : digits;
    }
}
