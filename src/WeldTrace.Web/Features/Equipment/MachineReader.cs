using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Equipment;

/// <summary>A machine with its latest runs and the signatures under its clearings and openings.</summary>
public sealed record MachineView(
    Machine Machine,
    IReadOnlyList<WeldRun> LatestRuns,
    IReadOnlyList<Signature> Signatures
);

public sealed class MachineReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    private const int RunsShown = 20;

    /// <summary>The machine alone; null when there is none.</summary>
    public async Task<Machine?> FindMachineAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Machines.AsNoTracking().SingleOrDefaultAsync(m => m.Id == id, cancellation);
    }

    /// <summary>The machine with what belongs to it; null when there is none.</summary>
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
                    .ToListAsync(cancellation),
                await db
                    .Signatures.AsNoTracking()
                    .Where(s => s.SignedId == id)
                    .OrderBy(s => s.At)
                    .ToListAsync(cancellation)
            );
    }
}
