using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Marks;

namespace WeldTrace.Web.Features.Home;

/// <summary>The repairs that are decided and wait for somebody to weld them.</summary>
internal static class RepairWork
{
    public static async Task<IEnumerable<WaitingWork>> ReadAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (!actor.HasAny(Role.Operator))
        {
            return [];
        }

        var decided = await db
            .Findings.AsNoTracking()
            .Where(f => f.State == FindingState.Disposed)
            .OrderBy(f => f.Number)
            .ToListAsync(cancellation);
        return decided
            .Where(f => f is { AwaitsRepair: true, PlannedRepair.Run: null })
            .Select(f => new WaitingWork(
                Urgency.Ready,
                Mark.Ready,
                "ready",
                $"Weld the repair of {f.Label} on {f.VesselSerial}",
                Routes.WeldRepair(f.VesselSerial, f.Number)
            ));
    }
}
