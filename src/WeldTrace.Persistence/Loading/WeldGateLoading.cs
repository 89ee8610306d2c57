using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Persistence.Loading;

public static class WeldGateLoading
{
    /// <summary>Everything that the rules before a weld look at, tracked; null when the vessel has no such weld step.</summary>
    /// <param name="db">Context.</param>
    /// <param name="serial">Serial number of the vessel.</param>
    /// <param name="sequence">Step on its route.</param>
    /// <param name="tool">Tool chosen, if any.</param>
    /// <param name="cancellation">Ends the loading.</param>
    public static async Task<WeldGateFacts?> FindWeldGateFactsAsync(
        this WeldTraceDbContext db,
        string serial,
        int sequence,
        Tool? tool,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var vessel = await db.Vessels.SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
        if (vessel?.Step(sequence) is not { Kind: StepKind.Weld } step)
        {
            return null;
        }

        var design = await db.VesselDesigns.SingleAsync(d => d.Id == vessel.DesignId, cancellation);
        var procedure = design.Content.Joint(step.JointCode)?.ProcedureNumber;
        return new WeldGateFacts(
            vessel,
            step,
            design,
            await db.Findings.Where(f => f.VesselId == vessel.Id).ToListAsync(cancellation),
            await db.WeldRuns.Where(r => r.VesselId == vessel.Id).ToListAsync(cancellation),
            await db.ProcedureRevisions.SingleOrDefaultAsync(
                p => p.Number == procedure && p.State == ProcedureState.Released,
                cancellation
            ),
            tool
        );
    }
}
