using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Designs.List;

public sealed class DesignListReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<IReadOnlyList<VesselDesign>> ReadAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db
            .VesselDesigns.AsNoTracking()
            .OrderBy(d => d.Number)
            .ThenByDescending(d => d.RevisionIndex)
            .ToListAsync(cancellation);
    }
}
