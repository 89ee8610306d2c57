using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Archive.Overview;

/// <summary>A vessel whose records may be old enough to be archived.</summary>
/// <param name="Serial">Serial number.</param>
/// <param name="State">State.</param>
/// <param name="LastActAt">UTC instant of the last act on it.</param>
public sealed record OldVessel(string Serial, VesselState State, DateTimeOffset LastActAt);

/// <summary>What is archived, and what may be.</summary>
/// <param name="Old">The oldest vessels that are not archived and on which nothing was done since <paramref name="Before"/>.</param>
/// <param name="Archives">The newest archives.</param>
/// <param name="Before">Day before which the last act must be.</param>
public sealed record ArchiveOverview(
    IReadOnlyList<OldVessel> Old,
    IReadOnlyList<VesselArchive> Archives,
    DateOnly Before
);

public sealed class ArchiveOverviewReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites,
    SiteDay day
)
{
    /// <summary>Most rows of either list.</summary>
    public const int MostRows = 100;

    public async Task<ArchiveOverview> ReadAsync(CancellationToken cancellation)
    {
        var site = await sites.GetAsync(cancellation);
        var before = (await day.TodayAsync(cancellation)).AddYears(
            -Retention.FewestYears(site.RetentionYears)
        );
        var since = site.BeginOf(before);
        await using var db = await contexts.CreateDbContextAsync(cancellation);

        // Identities grow with time: what was planned later is not looked at.
        var planned = Guid.CreateVersion7(since);
        var old = await db
            .Vessels.FromSql($"SELECT * FROM vessels WHERE id < {planned}")
            .AsNoTracking()
            .Where(v =>
                (
                    v.State == VesselState.Shipped
                    || v.State == VesselState.Expended
                    || v.State == VesselState.Scrapped
                ) && !db.VesselArchives.Any(a => a.VesselId == v.Id)
            )
            .OrderBy(v => v.Id)
            .Select(v => new
            {
                v.Serial,
                v.State,
                LastActAt = db
                    .LedgerEntries.Where(e => e.Vessels.Contains(v.Id))
                    .Max(e => (DateTimeOffset?)e.At),
            })
            .Where(v => v.LastActAt < since)
            .Take(MostRows)
            .ToListAsync(cancellation);
        var archives = await db
            .VesselArchives.AsNoTracking()
            .OrderByDescending(a => a.Id)
            .Take(MostRows)
            .ToListAsync(cancellation);
        return new(
            [.. old.Select(v => new OldVessel(v.Serial, v.State, v.LastActAt!.Value))],
            archives,
            before
        );
    }
}
