using System.Globalization;

namespace WeldTrace.Domain.Ledger;

/// <summary>Instants as the ledger writes them: UTC, microseconds, always the same length.</summary>
public static class LedgerTime
{
    private const string Pattern = "yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'";

    /// <summary>The instant in UTC, cut to whole microseconds (what the database can hold).</summary>
    /// <param name="value">Any instant.</param>
    public static DateTimeOffset Normalise(DateTimeOffset value)
    {
        var utc = value.ToUniversalTime();
        return utc.AddTicks(-(utc.Ticks % TimeSpan.TicksPerMicrosecond));
    }

    /// <summary>For example 2026-03-01T09:15:00.000000Z.</summary>
    /// <param name="value">Any instant; it is normalised first.</param>
    public static string Print(DateTimeOffset value) =>
        Normalise(value).ToString(Pattern, CultureInfo.InvariantCulture);

    /// <summary>Reads what <see cref="Print"/> wrote.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="FormatException">The text has another form.</exception>
    public static DateTimeOffset Read(string text) =>
        DateTimeOffset.ParseExact(
            text,
            Pattern,
            CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal
        );
}
