namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Writes whole numbers of a last digit as decimals.</summary>
internal static class DecimalText
{
    private static ReadOnlySpan<uint> Units =>
        [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000, 1_000_000_000];

    private static ReadOnlySpan<byte> Pairs =>
        "00010203040506070809101112131415161718192021222324252627282930313233343536373839404142434445464748495051525354555657585960616263646566676869707172737475767778798081828384858687888990919293949596979899"u8;

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
        var at = 0;
        if (isNegative)
        {
            text[at++] = (byte)'-';
        }

        var digits = code < 0 ? unchecked((uint)-code) : (uint)code;
        var unit = Units[scale];
        var whole = digits / unit;
        if (whole < 10)
        {
            text[at++] = (byte)('0' + whole);
        }
        else
        {
            var wholeDigits = CountDigits(whole);
            WriteDigits(whole, text.Slice(at, wholeDigits));
            at += wholeDigits;
        }

        if (decimals == 0)
        {
            return at;
        }

        text[at++] = mark;
        WriteDigits(digits - (whole * unit), text.Slice(at, scale));
        at += scale;
        for (var padding = scale; padding < decimals; padding++)
        {
            text[at++] = (byte)'0';
        }

        return at;
    }

    /// <summary>Digits of a number of two or more.</summary>
    private static int CountDigits(uint value)
    {
        var count = 2;
        while (count < Units.Length && value >= Units[count])
        {
            count++;
        }

        return count;
    }

    /// <summary>Fills the text with the last digits of a number, two at a time.</summary>
    private static void WriteDigits(uint value, Span<byte> text)
    {
        var at = text.Length;
        while (at >= 2)
        {
            var rest = value / 100;
            at -= 2;
            Pairs.Slice((int)(value - (rest * 100)) * 2, 2).CopyTo(text.Slice(at, 2));
            value = rest;
        }

        if (at == 1)
        {
            text[0] = (byte)('0' + (value % 10));
        }
    }
}
