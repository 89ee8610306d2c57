using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Tooling;

namespace WeldTrace.Persistence.Loading;

public static class MeasuredPins
{
    /// <summary>The pin that was measured last among the tools of a design that are in service; null when none was.</summary>
    public static async Task<MeasuredPin?> FindMeasuredPinAsync(
        this WeldTraceDbContext db,
        Guid toolDesignId,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        return MeasuredPin.Latest(
            await db
                .Tools.AsNoTracking()
                .Where(t => t.DesignId == toolDesignId && t.State == ToolState.InService)
                .ToListAsync(cancellation)
        );
    }
}
