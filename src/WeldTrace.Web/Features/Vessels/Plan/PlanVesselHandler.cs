using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Features.Vessels.Plan;

public sealed class PlanVesselHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    public async Task<PlanVesselChoices> ChoicesAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return new PlanVesselChoices(
            await db
                .VesselDesigns.AsNoTracking()
                .Where(d => d.State == DesignState.Released)
                .OrderBy(d => d.Number)
                .ToListAsync(cancellation),
            await db
                .MaterialLots.AsNoTracking()
                .OrderByDescending(l => l.Number)
                .ToListAsync(cancellation)
        );
    }

    public async Task<Outcome> HandleAsync(
        PlanVesselForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var design = await db
            .VesselDesigns.AsNoTracking()
            .SingleOrDefaultAsync(d => d.Id == form.DesignId, cancellation);
        if (design is null)
        {
            return Outcome.Refused("design", "Choose the design.", nameof(form.DesignId));
        }

        var components = await ComponentsAsync(db, form, cancellation);
        var planned = Vessel.Plan(
            form.Serial ?? "",
            design,
            form.ProductionLot ?? "",
            components,
            actor,
            clock.GetUtcNow()
        );
        if (!planned.IsAccepted)
        {
            return planned.WithoutValue();
        }

        db.Add(planned.Value);
        return await db.SaveAsync(cancellation);
    }

    private static async Task<List<Component>> ComponentsAsync(
        WeldTraceDbContext db,
        PlanVesselForm form,
        CancellationToken cancellation
    )
    {
        var rows = form.Components.Where(c => !c.IsEmpty).ToList();
        var ids = rows.Select(r => r.MaterialLotId ?? Guid.Empty).ToList();
        var lots = await db
            .MaterialLots.AsNoTracking()
            .Where(l => ids.Contains(l.Id))
            .ToDictionaryAsync(l => l.Id, cancellation);
        return
        [
            .. rows.Select(r =>
            {
                var lot = lots.GetValueOrDefault(r.MaterialLotId ?? Guid.Empty);
                return new Component(
                    r.Name?.Trim() ?? "",
                    r.Serial?.Trim() ?? "",
                    lot?.Id ?? Guid.Empty,
                    lot?.Number ?? "",
                    lot?.CastNumber ?? ""
                );
            }),
        ];
    }
}
