using System.Globalization;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>
/// Reads and writes time stamps of a calendar: a date as <c>2026-03-01</c>, <c>2026/03/01</c> or <c>01.03.2026</c>, a T or a
/// space, a time with up to nine decimals of the second, and Z or an offset from UTC. A time of day alone counts from
/// 1970-01-01. ISO 8601-1:2019 but for the two other forms of the date.
/// </summary>
internal static class TimeStampText
{
    public const int MostDecimals = 9;
    private const int LongestText = 40;
    private const long NanosecondsPerTick = 100;
    private const long NanosecondsPerSecond = 1_000_000_000;
    private const int DateLength = 10;
    private const int ClockLength = 8;

    /// <summary>Reads a stamp: nanoseconds since 1970-01-01 UTC, and how it was written.</summary>
    public static bool TryRead(
        ReadOnlySpan<byte> text,
        out long nanoseconds,
        out TimeStampForm form
    )
    {
        (nanoseconds, form) = (0, default);
        if (text.Length is < ClockLength or > LongestText)
        {
            return false;
        }

        var at = 0;
        if (TryDate(text, out var day, out var date))
        {
            if (text.Length <= DateLength || text[DateLength] is not ((byte)'T' or (byte)' '))
            {
                return false;
            }

            (at, form) = (DateLength + 1, new(date, (char)text[DateLength], 0, '.', ""));
        }

        if (!TryClock(text[at..], out var ofDay, out var length, ref form))
        {
            return false;
        }

        var zone = text[(at + length)..];
        if (!TryOffset(zone, out var offset))
        {
            return false;
        }

        form = form with { Zone = zone.IsEmpty ? "" : System.Text.Encoding.ASCII.GetString(zone) };
        nanoseconds = (day * NanosecondsPerTick) + ofDay - offset;
        return true;
    }

    /// <summary>Writes a stamp as it was written; gives the number of bytes.</summary>
    public static int Write(long nanoseconds, in TimeStampForm form, Span<byte> text)
    {
        TryOffset(System.Text.Encoding.ASCII.GetBytes(form.Zone), out var offset);
        var local = nanoseconds + offset;
        var stamp = DateTime.UnixEpoch.AddTicks(local / NanosecondsPerTick);
        var pattern = form.Date switch
        {
            TimeStampDate.YearMonthDay => $"yyyy-MM-dd'{form.Between}'HH:mm:ss",
            TimeStampDate.YearMonthDaySlashes => $"yyyy'/'MM'/'dd'{form.Between}'HH:mm:ss",
            TimeStampDate.DayMonthYear => $"dd'.'MM'.'yyyy'{form.Between}'HH:mm:ss",
            _ => "HH:mm:ss",
        };
        stamp.TryFormat(text, out var length, pattern, CultureInfo.InvariantCulture);
        if (form.Decimals > 0)
        {
            text[length++] = (byte)form.Mark;
            var fraction = local % NanosecondsPerSecond;
            for (var i = 0; i < form.Decimals; i++)
            {
                var digit = fraction / (NanosecondsPerSecond / 10);
                text[length++] = (byte)('0' + digit);
                fraction = fraction % (NanosecondsPerSecond / 10) * 10;
            }
        }

        return length + System.Text.Encoding.ASCII.GetBytes(form.Zone, text[length..]);
    }

    private static bool TryDate(ReadOnlySpan<byte> text, out long ticks, out TimeStampDate date)
    {
        (ticks, date) = (0, TimeStampDate.None);
        if (text.Length < DateLength)
        {
            return false;
        }

        date = (text[2], text[4], text[5], text[7]) switch
        {
            (_, (byte)'-', _, (byte)'-') => TimeStampDate.YearMonthDay,
            (_, (byte)'/', _, (byte)'/') => TimeStampDate.YearMonthDaySlashes,
            ((byte)'.', _, (byte)'.', _) => TimeStampDate.DayMonthYear,
            _ => TimeStampDate.None,
        };
        var isDayFirst = date == TimeStampDate.DayMonthYear;
        if (
            date == TimeStampDate.None
            || !TryDigits(isDayFirst ? text[6..10] : text[..4], out var year)
            || !TryDigits(isDayFirst ? text[3..5] : text[5..7], out var month)
            || !TryDigits(isDayFirst ? text[..2] : text[8..10], out var day)
            || year is < 1970 or > 2200
            || month is < 1 or > 12
            || day < 1
            || day > DateTime.DaysInMonth(year, month)
        )
        {
            return false;
        }

        ticks =
            new DateTime(year, month, day, 0, 0, 0, DateTimeKind.Utc).Ticks
            - DateTime.UnixEpoch.Ticks;
        return true;
    }

    private static bool TryClock(
        ReadOnlySpan<byte> text,
        out long nanoseconds,
        out int length,
        ref TimeStampForm form
    )
    {
        (nanoseconds, length) = (0, ClockLength);
        if (
            text.Length < ClockLength
            || text[2] != (byte)':'
            || text[5] != (byte)':'
            || !TryDigits(text[..2], out var hours)
            || !TryDigits(text[3..5], out var minutes)
            || !TryDigits(text[6..8], out var seconds)
            || hours > 23
            || minutes > 59
            || seconds > 59
        )
        {
            return false;
        }

        var (fraction, decimals) = (0L, 0);
        if (text.Length > length && text[length] is (byte)'.' or (byte)',')
        {
            form = form with { Mark = (char)text[length++] };
            for (var unit = NanosecondsPerSecond / 10; length < text.Length; unit /= 10)
            {
                var digit = text[length] - '0';
                if (digit is < 0 or > 9)
                {
                    break;
                }

                fraction += digit * unit;
                (length, decimals) = (length + 1, decimals + 1);
            }
        }

        form = form with { Decimals = decimals };
        nanoseconds =
            ((((hours * 60L) + minutes) * 60) + seconds) * NanosecondsPerSecond + fraction;
        return decimals <= MostDecimals;
    }

    private static bool TryOffset(ReadOnlySpan<byte> text, out long nanoseconds)
    {
        nanoseconds = 0;
        if (text.IsEmpty || text.SequenceEqual("Z"u8))
        {
            return true;
        }

        if (
            text[0] is not ((byte)'+' or (byte)'-')
            || text.Length is not (5 or 6)
            || (text.Length == 6 && text[3] != (byte)':')
            || !TryDigits(text[1..3], out var hours)
            || !TryDigits(text[^2..], out var minutes)
            || hours > 14
            || minutes > 59
        )
        {
            return false;
        }

        nanoseconds = ((hours * 60L) + minutes) * 60 * NanosecondsPerSecond;
        nanoseconds = text[0] == (byte)'-' ? -nanoseconds : nanoseconds;
        return true;
    }

    private static bool TryDigits(ReadOnlySpan<byte> text, out int value)
    {
        value = 0;
        foreach (var c in text)
        {
            if (c is < (byte)'0' or > (byte)'9')
            {
                return false;
            }

            value = (value * 10) + c - '0';
        }

        return true;
    }
}
