using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Welding.EndRun;

/// <summary>Ends a run as planned.</summary>
public sealed class EndRunHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    /// <summary>The run; null when there is none.</summary>
    public async Task<WeldRun?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.WeldRuns.AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, cancellation);
    }

    public async Task<Outcome> HandleAsync(
        Guid id,
        EndRunForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindRunAsync(id, cancellation) is not { } records)
        {
            return Outcome.Refused("run", "There is no such run.");
        }

        var outcome = records.Run.End(form.EndNote, records.Tool, actor, clock.GetUtcNow());
        return outcome.IsAccepted ? await db.SaveAsync(cancellation) : outcome;
    }
}
