using System.Globalization;

namespace WeldTrace.Documents;

/// <summary>Instants as they are printed: in the site's time zone, ISO 8601 order.</summary>
internal static class SiteTime
{
    /// <summary>For instance <c>2031-05-14 09:12</c>.</summary>
    public static string Minute(DateTimeOffset instant, TimeZoneInfo zone) =>
        Local(instant, zone).ToString("yyyy-MM-dd'\u00A0'HH:mm", CultureInfo.InvariantCulture);

    /// <summary>With seconds and distance from UTC, for signatures: <c>2031-05-14 09:12:33 +02:00</c>.</summary>
    public static string Second(DateTimeOffset instant, TimeZoneInfo zone) =>
        Local(instant, zone)
            .ToString("yyyy-MM-dd HH:mm:ss'\u00A0'zzz", CultureInfo.InvariantCulture);

    private static DateTimeOffset Local(DateTimeOffset instant, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTime(instant, zone);
}
