using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Tooling;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Tools.Show;

public sealed class ToolReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<(Tool Tool, ToolDesign Design)?> FindAsync(
        Guid id,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var tool = await db
            .Tools.AsNoTracking()
            .SingleOrDefaultAsync(t => t.Id == id, cancellation);
        return tool is null
            ? null
            : (
                tool,
                await db
                    .ToolDesigns.AsNoTracking()
                    .SingleAsync(d => d.Id == tool.DesignId, cancellation)
            );
    }
}
