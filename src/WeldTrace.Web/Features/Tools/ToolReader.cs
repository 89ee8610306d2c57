using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

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
            [
                .. (await db.LoadPlannedPassesAsync(cancellation)).Where(p =>
                    p.ToolDesignId == tool.DesignId
                ),
            ],
            await db
                .WeldRuns.Where(r => r.ToolId == id)
                .Select(r => r.Id)
                .ToHashSetAsync(cancellation)
        );
    }
}
