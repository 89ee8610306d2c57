using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Limits.List;

/// <summary>Enters the tables that come with the program into a site that was set up before it had them.</summary>
public sealed class ShipLimitsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<bool> IsAnyMissingAsync(Actor actor, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return (await MissingAsync(db, actor, cancellation)).Count > 0;
    }

    public async Task<Outcome> HandleAsync(Actor actor, CancellationToken cancellation)
    {
        if (RoleRules.Require(actor, Role.QualityManager) is { } refusal)
        {
            return Outcome.From([refusal]);
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.AddRange(await MissingAsync(db, actor, cancellation));
        return await db.SaveAsync(cancellation);
    }

    private async Task<IReadOnlyList<LimitTable>> MissingAsync(
        WeldTraceDbContext db,
        Actor actor,
        CancellationToken cancellation
    ) =>
        ShippedLimits.Missing(
            await db.LimitTables.Select(t => t.Code).Distinct().ToListAsync(cancellation),
            actor,
            clock.GetUtcNow()
        );
}
