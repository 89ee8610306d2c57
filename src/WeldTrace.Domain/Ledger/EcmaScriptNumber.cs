using System.Globalization;
using System.Numerics;
using System.Text;

namespace WeldTrace.Domain.Ledger;

/// <summary>Prints numbers as RFC 8785 section 3.2.2.3 asks: ECMA-262 Number::toString, radix 10.</summary>
public static class EcmaScriptNumber
{
    private const int LargestPlainExponent = 21;
    private const int SmallestPlainExponent = -6;

    /// <summary>The shortest text that reads back as the same double.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="CanonicalJsonException">The value is NaN or infinite.</exception>
    public static string Print(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new CanonicalJsonException("JSON has no number for NaN or infinity.");
        }
        if (value == 0)
        {
            return "0";
        }
        var sign = value < 0 ? "-" : "";
        var (digits, point) = ShortestDigits(Math.Abs(value));
        return sign + Lay(digits, point);
    }

    /// <summary>Reads a JSON number literal and prints it canonically.</summary>
    /// <param name="literal">The literal as UTF-8.</param>
    /// <exception cref="CanonicalJsonException">
    /// The number is too large for a double, or is an integer whose digits a double cannot hold.
    /// </exception>
    public static string Normalise(ReadOnlySpan<byte> literal)
    {
        var value = double.Parse(literal, NumberStyles.Float, CultureInfo.InvariantCulture);
        var printed = Print(value);
        if (literal.IndexOfAny(".eE"u8) < 0 && !SameInteger(literal, printed))
        {
            throw new CanonicalJsonException(
                $"The integer would become {printed} as a double; write it as a string."
            );
        }
        return printed;
    }

    private static bool SameInteger(ReadOnlySpan<byte> literal, string printed) =>
        printed.Contains('e', StringComparison.Ordinal)
        || Whole(literal) == Whole(Encoding.ASCII.GetBytes(printed));

    private static BigInteger Whole(ReadOnlySpan<byte> ascii) =>
        BigInteger.Parse(
            Encoding.ASCII.GetString(ascii),
            NumberStyles.AllowLeadingSign,
            CultureInfo.InvariantCulture
        );

    // value = 0.digits × 10^point
    private static (string Digits, int Point) ShortestDigits(double value)
    {
        var text = value.ToString("R", CultureInfo.InvariantCulture);
        var mark = text.IndexOf('E', StringComparison.Ordinal);
        var exponent = mark < 0 ? 0 : int.Parse(text[(mark + 1)..], CultureInfo.InvariantCulture);
        var mantissa = mark < 0 ? text : text[..mark];
        var dot = mantissa.IndexOf('.', StringComparison.Ordinal);
        var whole = dot < 0 ? mantissa.Length : dot;
        var all = mantissa.Replace(".", "", StringComparison.Ordinal);
        var leadingZeros = all.Length - all.TrimStart('0').Length;
        return (all.Trim('0'), whole - leadingZeros + exponent);
    }

    private static string Lay(string digits, int point)
    {
        if (point > LargestPlainExponent || point <= SmallestPlainExponent)
        {
            var exponent = point - 1;
            var fraction = digits.Length > 1 ? "." + digits[1..] : "";
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{digits[0]}{fraction}e{(exponent < 0 ? '-' : '+')}{Math.Abs(exponent)}"
            );
        }
        if (point <= 0)
        {
            return "0." + new string('0', -point) + digits;
        }
        return digits.Length <= point
            ? digits.PadRight(point, '0')
            : digits[..point] + "." + digits[point..];
    }
}
