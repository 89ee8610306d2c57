using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Vessels.Plan;

/// <summary>Plans a vessel from components, which are built into it by the same act.</summary>
public sealed class PlanVesselHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    private const int MostOffered = 500;

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
                .Components.AsNoTracking()
                .Where(c => c.VesselId == null && c.ScrappedBecause == null)
                .OrderBy(c => c.Serial)
                .Take(MostOffered)
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

        var (rows, refusals) = await RowsAsync(db, form, cancellation);
        refusals.AddRange(await AgainstMaterialAsync(db, design, rows, cancellation));
        if (refusals.Count > 0)
        {
            return Outcome.From(refusals);
        }

        var at = clock.GetUtcNow();
        var planned = Vessel.Plan(
            form.Serial ?? "",
            design,
            form.ProductionLot ?? "",
            [.. rows.Select(r => r.Component.OnVessel(r.Name))],
            actor,
            at
        );
        if (!planned.IsAccepted)
        {
            return planned.WithoutValue();
        }

        foreach (var row in rows)
        {
            var built = row.Component.BuildInto(planned.Value, actor, at);
            if (!built.IsAccepted)
            {
                return built;
            }
        }

        db.Add(planned.Value);
        return await db.SaveAsync(cancellation);
    }

    private static async Task<(List<PlannedComponent>, List<Refusal>)> RowsAsync(
        WeldTraceDbContext db,
        PlanVesselForm form,
        CancellationToken cancellation
    )
    {
        List<PlannedComponent> rows = [];
        List<Refusal> refusals = [];
        for (var i = 0; i < form.Components.Count; i++)
        {
            var typed = form.Components[i];
            if (typed.IsEmpty)
            {
                continue;
            }

            var field = FormattableString.Invariant($"Components[{i}].Serial");
            var component = await db.FindComponentAsync(typed.Serial, cancellation);
            var against =
                component is null
                    ? $"No component has the serial '{typed.Serial?.Trim()}'; enter it first, or check the serial."
                : rows.Any(r => r.Component.Id == component.Id)
                    ? $"{component.Serial} stands in two rows; a component is built in once."
                : component.AgainstUse;
            if (against is not null)
            {
                refusals.Add(new Refusal("component", against, field));
            }
            else
            {
                rows.Add(new(component!, typed.Name ?? "", field));
            }
        }

        return (rows, refusals);
    }

    // What the gate would refuse at the first weld is told when the vessel is planned.
    private static async Task<IEnumerable<Refusal>> AgainstMaterialAsync(
        WeldTraceDbContext db,
        VesselDesign design,
        List<PlannedComponent> rows,
        CancellationToken cancellation
    )
    {
        var lotIds = rows.Select(r => r.Component.LotId).ToList();
        var lots = await db
            .MaterialLots.AsNoTracking()
            .Where(l => lotIds.Contains(l.Id))
            .ToDictionaryAsync(l => l.Id, cancellation);
        var required = InspectionDocuments.Stronger(
            design.Content.RequiredDocument,
            await db.Sites.Select(s => s.RequiredDocument).SingleOrDefaultAsync(cancellation)
        );
        return rows.SelectMany(r =>
            MaterialRules
                .AgainstLot(lots[r.Component.LotId], design.Content, null, required)
                .Select(sentence => new Refusal("F7", $"{r.Component.Serial}: {sentence}", r.Field))
        );
    }

    private sealed record PlannedComponent(CutComponent Component, string Name, string Field);
}
