using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Welding;

/// <summary>Loads a weld step and judges its rules for the tool and machine chosen.</summary>
public sealed class WeldStepReader(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    /// <summary>The step or repair; null when the vessel has none such.</summary>
    public async Task<WeldStepView?> FindAsync(
        WeldTarget target,
        string? toolCode,
        string? machineCode,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(target);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var machines = await db.Machines.OrderBy(m => m.Name).ToListAsync(cancellation);
        var only = string.IsNullOrWhiteSpace(machineCode) && machines.Count == 1;
        var facts = await target.FindFactsAsync(
            db,
            new WeldChoice(
                toolCode,
                only ? machines[0].Name : machineCode,
                actor,
                clock.GetUtcNow()
            ),
            cancellation
        );
        if (facts is null)
        {
            return null;
        }

        var gate = WeldGate.Judge(facts);
        var designId = facts.Revision?.Content.ToolDesignId;
        return new WeldStepView
        {
            Facts = facts,
            Gate = gate,
            Checks = PreWeldChecks.Of(facts, gate),
            ToolDesign = await db.ToolDesigns.SingleOrDefaultAsync(
                d => d.Id == designId,
                cancellation
            ),
            Machines = machines,
            Tools = await ToolsAsync(db, designId, cancellation),
        };
    }

    private static async Task<IReadOnlyList<Tool>> ToolsAsync(
        WeldTraceDbContext db,
        Guid? designId,
        CancellationToken cancellation
    )
    {
        var tools = await db
            .Tools.Where(t => t.DesignId == designId && t.State == ToolState.InService)
            .ToListAsync(cancellation);
        return [.. tools.OrderBy(t => t.Remaining).ThenBy(t => t.Mark)];
    }
}
