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
        var i = at;
        isNegative = i < line.Length && line[i] == (byte)'-';
        i += isNegative ? 1 : 0;
        var first = i;
        mantissa = 0;
        var markAt = -1;
        for (; i < line.Length; i++)
        {
            var digit = (uint)(line[i] - '0');
            if (digit <= 9)
            {
                mantissa = unchecked((mantissa * 10) + digit);
            }
            else if (line[i] == mark && markAt < 0)
            {
                markAt = i;
            }
            else
            {
                break;
            }
        }

        at = i;
        decimals = markAt < 0 ? 0 : i - markAt - 1;
        var digits = i - first - (markAt < 0 ? 0 : 1);
        return digits is > 0 and <= PowersOfTen.MostDigits;
    }
}
