using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Tracing;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Vessels.Genealogy;

/// <summary>A vessel with everything that made it.</summary>
public sealed record VesselGenealogy(Vessel Vessel, Domain.Tracing.Genealogy Genealogy, Site Site)
{
    /// <summary>Certificates and calibrations that did not hold when they were relied on.</summary>
    public IReadOnlyList<GenealogyProof> Doubtful => [.. Genealogy.Proofs.Where(p => !p.Holds)];
}

public sealed class GenealogyReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteReader sites
)
{
    public async Task<VesselGenealogy?> FindAsync(string serial, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var history = await db.FindVesselHistoryAsync(serial, cancellation);
        if (history is null)
        {
            return null;
        }

        var site = await sites.GetAsync(cancellation);
        var records = await db.LoadRecordsBehindAsync(history, cancellation);
        return new(
            history.Vessel,
            Domain.Tracing.Genealogy.Of(history.Vessel, records, site.DayOf),
            site
        );
    }
}
