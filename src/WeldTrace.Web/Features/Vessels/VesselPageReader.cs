using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Vessels;

public sealed class VesselPageReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<VesselHistory?> FindAsync(string serial, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.FindVesselHistoryAsync(serial, cancellation);
    }
}
