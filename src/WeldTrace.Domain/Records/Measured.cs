using System.Globalization;

namespace WeldTrace.Domain.Records;

/// <summary>
/// A measured value with its digits as they were written down: <c>12.50 bar</c> is another statement than <c>12.5 bar</c>.
/// Stored and hashed as text, so that no digit is lost or invented.
/// </summary>
/// <param name="Digits">Decimal number with a point, without thousands separators, for instance <c>12.50</c>.</param>
/// <param name="Unit">Unit symbol, for instance <c>bar</c>.</param>
public sealed record Measured(string Digits, string Unit)
{
    private const int LongestDigits = 24;

    /// <summary>The number written by <see cref="Digits"/>, in <see cref="Unit"/>.</summary>
    /// <exception cref="FormatException">The digits are no number; not possible for a value made by <see cref="TryRead"/>.</exception>
    public double InUnit() =>
        double.Parse(
            Digits,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture
        );

    /// <summary>Reads what a person typed: a decimal point or comma, a leading sign, no exponent.</summary>
    /// <param name="text">Typed text; may be null.</param>
    /// <param name="unit">Unit the value is in.</param>
    /// <param name="measured">The value when it could be read.</param>
    public static bool TryRead(
        string? text,
        string unit,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out Measured? measured
    )
    {
        measured = null;
        var digits = text?.Trim().Replace(',', '.');
        if (string.IsNullOrEmpty(digits) || digits.Length > LongestDigits)
        {
            return false;
        }

        var isNumber = decimal.TryParse(
            digits,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out _
        );
        if (isNumber)
        {
            measured = new Measured(digits, unit);
        }

        return isNumber;
    }

    /// <summary>Digits, a space and the unit; none before the degree sign.</summary>
    public override string ToString() => Unit == "°" ? Digits + Unit : $"{Digits} {Unit}";
}
