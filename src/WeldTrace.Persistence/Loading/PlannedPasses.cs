using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Persistence.Loading;

/// <summary>A pass of a released vessel design that is welded with tools of one design.</summary>
/// <param name="ToolDesignId">Design of those tools.</param>
/// <param name="Design">Number and revision of the vessel design.</param>
/// <param name="JointCode">Joint.</param>
/// <param name="Number">Pass.</param>
/// <param name="Path">Path, overlap included.</param>
public sealed record PlannedPass(
    Guid ToolDesignId,
    string Design,
    string JointCode,
    int Number,
    Length Path
);

public static class PlannedPassLoading
{
    /// <summary>The passes of the released vessel designs, by the tool design that their released procedure names.</summary>
    public static async Task<IReadOnlyList<PlannedPass>> LoadPlannedPassesAsync(
        this WeldTraceDbContext db,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var released = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p => p.State == ProcedureState.Released)
            .ToListAsync(cancellation);
        var designs = await db
            .VesselDesigns.AsNoTracking()
            .Where(d => d.State == DesignState.Released)
            .OrderBy(d => d.Number)
            .ToListAsync(cancellation);
        return
        [
            .. from design in designs
            from joint in design.Content.Joints
            join procedure in released on joint.ProcedureNumber equals procedure.Number
            from pass in joint.Passes
            select new PlannedPass(
                procedure.Content.ToolDesignId,
                design.Label,
                joint.Code,
                pass.Number,
                pass.Path
            ),
        ];
    }
}
