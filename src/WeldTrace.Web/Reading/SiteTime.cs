using System.Globalization;
using WeldTrace.Domain.Sites;

namespace WeldTrace.Web.Reading;

/// <summary>Instants as the people at the site read them.</summary>
public static class SiteTime
{
    /// <summary>Date and time to the minute in the site's time zone, for instance 2026-11-25 09:30.</summary>
    public static string Show(this Site site, DateTimeOffset instant)
    {
        ArgumentNullException.ThrowIfNull(site);
        return TimeZoneInfo
            .ConvertTime(instant, site.TimeZone)
            .ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
    }

    /// <summary>The same to the second with the offset from UTC, for signatures and papers.</summary>
    public static string ShowExactly(this Site site, DateTimeOffset instant)
    {
        ArgumentNullException.ThrowIfNull(site);
        return TimeZoneInfo
            .ConvertTime(instant, site.TimeZone)
            .ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture);
    }
}
