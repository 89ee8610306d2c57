using System.Runtime.CompilerServices;
using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>Reads [-]digits[.digits] of up to 15 digits; anything else is left to the slow path.</summary>
internal static class PlainNumber
{
    /// <summary>Reads a number that starts at <paramref name="at"/> and moves past it; false when it is not plain.</summary>
    public static bool TryRead(
        ReadOnlySpan<byte> line,
        byte mark,
        ref int at,
        out bool isNegative,
        out long mantissa,
        out int decimals
    )
    {
        var rest = line[at..];
        isNegative = rest is [(byte)'-', ..];
        rest = isNegative ? rest[1..] : rest;
        mantissa = 0;
        var whole = Digits(rest, ref mantissa);
        decimals = 0;
        var used = whole;
        if (whole < rest.Length && rest[whole] == mark)
        {
            decimals = Digits(rest[(whole + 1)..], ref mantissa);
            used = whole + 1 + decimals;
        }

        at += (isNegative ? 1 : 0) + used;
        var digits = whole + decimals;
        return digits is > 0 and <= PowersOfTen.MostDigits;
    }

    /// <summary>Appends the leading digits to a number, and counts them.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Digits(ReadOnlySpan<byte> text, ref long mantissa)
    {
        var value = mantissa;
        var i = 0;
        for (; i < text.Length; i++)
        {
            var digit = (uint)(text[i] - '0');
            if (digit > 9)
            {
                break;
            }

            value = unchecked((value * 10) + digit);
        }

        mantissa = value;
        return i;
    }
}
