using WeldTrace.Domain.Sites;

namespace WeldTrace.Web.Reading;

/// <summary>The day at the site, by which certificates and calibrations are judged.</summary>
public sealed class SiteDay(SiteReader sites, TimeProvider clock)
{
    public async Task<DateOnly> TodayAsync(CancellationToken cancellation = default) =>
        Of(await sites.GetAsync(cancellation), clock.GetUtcNow());

    /// <summary>The day that an instant falls on at the site.</summary>
    public static DateOnly Of(Site site, DateTimeOffset instant)
    {
        ArgumentNullException.ThrowIfNull(site);
        return site.DayOf(instant);
    }
}
