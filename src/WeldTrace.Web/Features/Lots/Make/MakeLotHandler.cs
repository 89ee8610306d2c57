using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Persistence;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Lots.Make;

/// <summary>Forms a production lot of the planned vessels that fit its rule.</summary>
public sealed class MakeLotHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    private const int MostOffered = 200;
    private static readonly char[] Separators = [' ', ',', ';', '\r', '\n', '\t'];

    public async Task<MakeLotChoices> ChoicesAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        var designs = await db
            .VesselDesigns.Where(d => d.State == DesignState.Released)
            .OrderBy(d => d.Number)
            .ToListAsync(cancellation);
        return new MakeLotChoices(
            [.. designs.Where(d => d.Content.Samples is not null)],
            await db
                .ProcedureRevisions.Where(p => p.State == ProcedureState.Released)
                .OrderBy(p => p.Number)
                .ToListAsync(cancellation),
            await db.Machines.OrderBy(m => m.Name).ToListAsync(cancellation),
            await db
                .MaterialLots.OrderByDescending(l => l.Id)
                .Take(MostOffered)
                .ToListAsync(cancellation)
        );
    }

    public async Task<Outcome<ProductionLot>> HandleAsync(
        MakeLotForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var entries = new Entries();
        var (from, until) = (
            entries.Day(form.From, "the first day of welding", nameof(form.From)),
            entries.Day(form.Until, "the last day of welding", nameof(form.Until))
        );
        List<Refusal> refusals = [.. entries.Refusals];
        var design = await db
            .VesselDesigns.AsNoTracking()
            .SingleOrDefaultAsync(d => d.Id == form.DesignId, cancellation);
        var procedure = await db
            .ProcedureRevisions.AsNoTracking()
            .SingleOrDefaultAsync(
                p => p.Id == form.ProcedureId && p.State == ProcedureState.Released,
                cancellation
            );
        if (design is null)
        {
            refusals.Add(new("design", "Choose the design.", nameof(form.DesignId)));
        }

        if (procedure is null)
        {
            refusals.Add(
                new("procedure", "Choose the released procedure.", nameof(form.ProcedureId))
            );
        }

        if (refusals.Count > 0)
        {
            return refusals;
        }

        var rule = new LotRule(
            RecordName.Of(procedure!),
            RecordName.Of(
                await db.ToolDesigns.SingleAsync(
                    t => t.Id == procedure!.Content.ToolDesignId,
                    cancellation
                )
            ),
            await NameAsync(db.Machines, form.MachineId, cancellation),
            await NameAsync(db.MaterialLots, form.MaterialLotId, cancellation),
            from,
            until
        );
        return await FormAsync(db, form, design!, rule, actor, cancellation);
    }

    private async Task<Outcome<ProductionLot>> FormAsync(
        WeldTraceDbContext db,
        MakeLotForm form,
        VesselDesign design,
        LotRule rule,
        Actor actor,
        CancellationToken cancellation
    )
    {
        var typed = (form.Vessels ?? "")
            .Split(Separators, StringSplitOptions.RemoveEmptyEntries)
            .Distinct()
            .ToList();
        var vessels = await VesselsAsync(db, design, rule, typed, cancellation);
        var unknown = typed.Except(vessels.Select(v => v.Serial)).ToList();
        if (unknown.Count > 0)
        {
            return new Refusal(
                "serial",
                $"There is no vessel {string.Join(", ", unknown)}. Check the serials.",
                nameof(form.Vessels)
            );
        }

        var lot = ProductionLot.Form(
            form.Number ?? "",
            design,
            rule,
            vessels,
            actor,
            clock.GetUtcNow()
        );
        if (!lot.IsAccepted)
        {
            return lot;
        }

        db.Add(lot.Value);
        var saved = await db.SaveAsync(cancellation);
        return saved.IsAccepted
            ? lot
            : saved
                .Refusals.Select(r =>
                    r.Code == "exists" ? r with { Field = nameof(form.Number) } : r
                )
                .ToList();
    }

    private static async Task<List<Vessel>> VesselsAsync(
        WeldTraceDbContext db,
        VesselDesign design,
        LotRule rule,
        List<string> typed,
        CancellationToken cancellation
    )
    {
        if (typed.Count > 0)
        {
            return await db.Vessels.Where(v => typed.Contains(v.Serial)).ToListAsync(cancellation);
        }

        var free = await db
            .Vessels.Where(v => v.DesignId == design.Id && v.LotId == null)
            .Where(v => v.State == VesselState.Planned || v.State == VesselState.InWork)
            .OrderBy(v => v.Serial)
            .ToListAsync(cancellation);
        return
        [
            .. free.Where(v =>
                !v.HasWeldingBegun
                && (
                    rule.MaterialLot is not { } material
                    || v.Components.Any(c => c.MaterialLotId == material.Id)
                )
            ),
        ];
    }

    private static async Task<RecordName?> NameAsync<T>(
        DbSet<T> records,
        Guid? id,
        CancellationToken cancellation
    )
        where T : Record
    {
        var record = await records
            .AsNoTracking()
            .SingleOrDefaultAsync(r => r.Id == id, cancellation);
        return record is null ? null : RecordName.Of(record);
    }
}
