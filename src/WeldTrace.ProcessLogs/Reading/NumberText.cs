using System.Globalization;
using System.Text;

namespace WeldTrace.ProcessLogs.Reading;

internal enum NumberForm
{
    Number,
    Missing,
    NotFinite,
    OtherDecimalMark,
    NotANumber,
}

/// <summary>Reads numbers as people and machines write them; nothing is guessed.</summary>
internal static class NumberText
{
    private const int LongestNumber = 64;

    private static readonly HashSet<string> NotFiniteWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "nan",
        "inf",
        "infinity",
        "ind",
        "qnan",
        "snan",
        "na",
        "n/a",
        "null",
        "1.#inf",
        "1.#ind",
        "1.#qnan",
        "1.#snan",
        "∞",
        "overflow",
    };

    /// <summary>Reads a field without spaces and quotes.</summary>
    public static NumberForm Read(ReadOnlySpan<byte> text, byte decimalMark, out double value)
    {
        value = 0;
        if (text.IsEmpty)
        {
            return NumberForm.Missing;
        }

        if (TryParse(text, decimalMark, out value))
        {
            return double.IsFinite(value) ? NumberForm.Number : NumberForm.NotFinite;
        }

        var otherMark = decimalMark == (byte)'.' ? (byte)',' : (byte)'.';
        return TryParse(text, otherMark, out _) ? NumberForm.OtherDecimalMark
            : IsNotFinite(text) ? NumberForm.NotFinite
            : NumberForm.NotANumber;
    }

    private static bool TryParse(ReadOnlySpan<byte> text, byte decimalMark, out double value)
    {
        value = 0;
        Span<byte> plain = stackalloc byte[LongestNumber];
        if (text.Length > LongestNumber || !IsPlain(text, decimalMark))
        {
            return false;
        }

        text.CopyTo(plain);
        plain = plain[..text.Length];
        plain.Replace(decimalMark, (byte)'.');
        return double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out value);
    }

    private static bool IsPlain(ReadOnlySpan<byte> text, byte decimalMark)
    {
        var (marks, digits) = (0, 0);
        foreach (var c in text)
        {
            marks += c == decimalMark ? 1 : 0;
            digits += c is >= (byte)'0' and <= (byte)'9' ? 1 : 0;
            if (c != decimalMark && "0123456789+-eE"u8.IndexOf(c) < 0)
            {
                return false;
            }
        }

        return marks <= 1 && digits > 0;
    }

    private static bool IsNotFinite(ReadOnlySpan<byte> text) =>
        text.Length <= LongestNumber
        && NotFiniteWords.Contains(Encoding.UTF8.GetString(text).TrimStart('+', '-'));
}
