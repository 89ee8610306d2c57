using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Equipment.ShowMachine;

/// <summary>A machine with its latest runs.</summary>
public sealed record MachineView(Machine Machine, IReadOnlyList<WeldRun> LatestRuns);

public sealed class MachineReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    private const int RunsShown = 20;

    /// <summary>The machine; null when there is none.</summary>
    public async Task<MachineView?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var machine = await db
            .Machines.AsNoTracking()
            .SingleOrDefaultAsync(m => m.Id == id, cancellation);
        return machine is null
            ? null
            : new MachineView(
                machine,
                await db
                    .WeldRuns.AsNoTracking()
                    .Where(r => r.MachineId == id)
                    .OrderByDescending(r => r.StartedAt)
                    .Take(RunsShown)
                    .ToListAsync(cancellation)
            );
    }
}
