namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Writes whole numbers of a last digit as decimals.</summary>
internal static class DecimalText
{
    /// <summary>Writes <paramref name="code"/> / 10^<paramref name="scale"/> with <paramref name="decimals"/> decimals, not fewer than the scale.</summary>
    public static int Write(
        int code,
        bool isNegative,
        int scale,
        int decimals,
        byte mark,
        Span<byte> text
    )
    {
        Span<byte> digits = stackalloc byte[24];
        var at = digits.Length;
        var rest = (uint)Math.Abs((long)code);
        for (var padding = scale; padding < decimals; padding++)
        {
            digits[--at] = (byte)'0';
        }

        for (var position = 0; rest > 0 || position <= scale; position++)
        {
            if (position == scale && decimals > 0)
            {
                digits[--at] = mark;
            }

            var quotient = rest / 10;
            digits[--at] = (byte)('0' + (rest - (quotient * 10)));
            rest = quotient;
        }

        if (isNegative)
        {
            digits[--at] = (byte)'-';
        }

        digits[at..].CopyTo(text);
        return digits.Length - at;
    }
}
