using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;

namespace WeldTrace.Persistence.Loading;

public static class ProcedureObjectsLoading
{
    /// <summary>Tool design and machine that a procedure names.</summary>
    public static async Task<ProcedureObjects> FindObjectsAsync(
        this WeldTraceDbContext db,
        ProcedureContent content,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(content);
        var machine = content.DetailsOrNone.Machine?.Id;
        return new ProcedureObjects(
            await db
                .ToolDesigns.AsNoTracking()
                .SingleOrDefaultAsync(d => d.Id == content.ToolDesignId, cancellation),
            machine is null
                ? null
                : await db
                    .Machines.AsNoTracking()
                    .SingleOrDefaultAsync(m => m.Id == machine, cancellation)
        );
    }
}
