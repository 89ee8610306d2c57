using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Persistence.Loading;

public static class DesignRules
{
    /// <summary>The least examinations by class as the site has them now; null when it has no such table.</summary>
    public static async Task<LeastExaminations?> LeastExaminationsAsync(
        this WeldTraceDbContext db,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var table = await db
            .LimitTables.AsNoTracking()
            .Where(t => t.Covers == LimitKind.LeastExaminations && t.SupersededById == null)
            .OrderBy(t => t.Code)
            .FirstOrDefaultAsync(cancellation);
        return table is null ? null : LeastExaminations.Of(table);
    }
}
