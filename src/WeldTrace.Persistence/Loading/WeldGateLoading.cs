using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Persistence.Loading;

/// <summary>What somebody is about to weld with.</summary>
/// <param name="Tool">Tool chosen; null when none is.</param>
/// <param name="Machine">Machine chosen; null when none is.</param>
/// <param name="Welder">Who is about to weld.</param>
/// <param name="At">UTC instant at which the run would begin.</param>
public sealed record WeldChoice(Tool? Tool, Machine? Machine, Actor Welder, DateTimeOffset At);

public static class WeldGateLoading
{
    /// <summary>Everything that the rules before a weld look at, the vessel tracked; null when it has no such weld step.</summary>
    /// <param name="db">Context.</param>
    /// <param name="serial">Serial number of the vessel.</param>
    /// <param name="sequence">Step on its route.</param>
    /// <param name="choice">Who welds, with what, when.</param>
    /// <param name="cancellation">Ends the loading.</param>
    public static async Task<WeldGateFacts?> FindWeldGateFactsAsync(
        this WeldTraceDbContext db,
        string serial,
        int sequence,
        WeldChoice choice,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(choice);
        var found = await db
            .Vessels.Where(v => v.Serial == serial)
            .Join(
                db.VesselDesigns,
                v => v.DesignId,
                d => d.Id,
                (v, d) => new { Vessel = v, Design = d }
            )
            .SingleOrDefaultAsync(cancellation);
        return found?.Vessel.Step(sequence) is { Kind: StepKind.Weld } step
            ? await LoadAsync(db, (found.Vessel, found.Design), step, choice, cancellation)
            : null;
    }

    private static async Task<WeldGateFacts> LoadAsync(
        WeldTraceDbContext db,
        (Vessel Vessel, VesselDesign Design) drawn,
        RouteStep step,
        WeldChoice choice,
        CancellationToken cancellation
    )
    {
        var (vessel, design) = drawn;
        var number = design.Content.Joint(step.JointCode)?.ProcedureNumber;
        var revision = await db.ProcedureRevisions.SingleOrDefaultAsync(
            p => p.Number == number && p.State == ProcedureState.Released,
            cancellation
        );
        var instruments = (revision?.Content.DetailsOrNone.Instruments ?? [])
            .Select(i => i.Id)
            .ToList();
        var toolDesign = choice.Tool?.DesignId;
        var welder = choice.Welder.PersonId;
        var material = await db.LoadMaterialAsync(vessel, cancellation);
        return new WeldGateFacts(
            vessel,
            step,
            design,
            await db.Findings.Where(f => f.VesselId == vessel.Id).ToListAsync(cancellation),
            await db.WeldRuns.Where(r => r.VesselId == vessel.Id).ToListAsync(cancellation),
            revision,
            choice.Tool
        )
        {
            Machine = choice.Machine,
            ToolDesign = toolDesign is null
                ? null
                : await db.ToolDesigns.SingleAsync(d => d.Id == toolDesign, cancellation),
            Instruments =
                instruments.Count == 0
                    ? []
                    : await db
                        .Instruments.Where(i => instruments.Contains(i.Id))
                        .ToListAsync(cancellation),
            Welder = choice.Welder,
            Certificates = await db
                .Certificates.Where(c => c.PersonId == welder)
                .ToListAsync(cancellation),
            Material = material.Facts,
            Preparation = material.Preparation,
            Concessions = await db
                .Concessions.Where(c => c.VesselId == vessel.Id)
                .OrderBy(c => c.Id)
                .ToListAsync(cancellation),
            Lot = await db.FindLotOfAsync(vessel, cancellation),
            Now = choice.At,
            Today = material.Site?.DayOf(choice.At) ?? DateOnly.FromDateTime(choice.At.UtcDateTime),
        };
    }
}
