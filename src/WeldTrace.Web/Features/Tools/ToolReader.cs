using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Tools;

/// <summary>Reads a tool with its design, its family and the passes that it may weld.</summary>
public sealed class ToolReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<ToolView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var tool = await db
            .Tools.AsNoTracking()
            .SingleOrDefaultAsync(t => t.Id == id, cancellation);
        if (tool is null)
        {
            return null;
        }

        var family = await db
            .Tools.AsNoTracking()
            .Where(t => t.DesignId == tool.DesignId)
            .OrderBy(t => t.Mark)
            .ToListAsync(cancellation);
        return new ToolView(
            tool,
            await db
                .ToolDesigns.AsNoTracking()
                .SingleAsync(d => d.Id == tool.DesignId, cancellation),
            [.. family.SelectMany(t => t.Lives)],
            await PassesAsync(db, tool.DesignId, cancellation),
            await db
                .WeldRuns.Where(r => r.ToolId == id)
                .Select(r => r.Id)
                .ToHashSetAsync(cancellation)
        );
    }

    private static async Task<IReadOnlyList<PlannedPass>> PassesAsync(
        WeldTraceDbContext db,
        Guid toolDesignId,
        CancellationToken cancellation
    )
    {
        var released = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p => p.State == ProcedureState.Released)
            .ToListAsync(cancellation);
        var numbers = released
            .Where(p => p.Content.ToolDesignId == toolDesignId)
            .Select(p => p.Number)
            .ToHashSet();
        var designs = await db
            .VesselDesigns.AsNoTracking()
            .Where(d => d.State == DesignState.Released)
            .OrderBy(d => d.Number)
            .ToListAsync(cancellation);
        return
        [
            .. from design in designs
            from joint in design.Content.Joints
            where numbers.Contains(joint.ProcedureNumber)
            from pass in joint.Passes
            select new PlannedPass(design.Label, joint.Code, pass.Number, PathOf(pass)),
        ];
    }

    private static Length PathOf(PassPlan pass) =>
        pass.TrackRadius * ((2 * Math.PI) + pass.Overlap.Radians);
}
