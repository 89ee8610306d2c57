using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Web.Features.Equipment.ShowInstrument;

/// <summary>Opens a finding on each vessel that was measured with an instrument found out of tolerance.</summary>
internal static class CalibrationFindings
{
    /// <summary>Adds the findings, to be saved with the calibration. Vessels that left the works stand on the page of the instrument only.</summary>
    public static async Task<Outcome> AddAsync(
        WeldTraceDbContext db,
        Instrument instrument,
        Actor actor,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        if (instrument.Latest is not { IsWithinLimit: false })
        {
            return Outcome.Accepted;
        }

        var measured = await db.LoadMeasuredWithAsync(
            instrument.Id,
            instrument.LastGoodBeforeLatest,
            cancellation
        );
        var ids = measured.Select(m => m.VesselId).OfType<Guid>().Distinct().ToList();
        var vessels = await db.Vessels.Where(v => ids.Contains(v.Id)).ToListAsync(cancellation);
        var designIds = vessels.Select(v => v.DesignId).ToList();
        var designs = await db
            .VesselDesigns.Where(d => designIds.Contains(d.Id))
            .ToDictionaryAsync(d => d.Id, cancellation);
        foreach (var vessel in vessels.Where(v => !v.IsFinal).OrderBy(v => v.Serial))
        {
            var design = designs[vessel.DesignId];
            var step = measured.Where(m => m.VesselId == vessel.Id).Min(m => StepOf(m, design));
            var finding = CalibrationReview.Ask(
                Guid.CreateVersion7(at),
                instrument,
                vessel,
                design,
                step,
                actor,
                at
            );
            if (!finding.IsAccepted)
            {
                return finding.WithoutValue();
            }

            db.Add(finding.Value);
        }

        return Outcome.Accepted;
    }

    // A fit-up belongs to a joint: to the first step that welds it.
    private static int StepOf(MeasuredWith measured, VesselDesign design) =>
        measured.StepSequence
        ?? design
            .Content.Route.First(s =>
                s.Kind == StepKind.Weld && s.JointCode == ((JointFitUp)measured.Record).JointCode
            )
            .Sequence;
}
