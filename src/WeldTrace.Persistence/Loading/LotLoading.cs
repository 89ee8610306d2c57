using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Persistence.Loading;

public static class LotLoading
{
    /// <summary>The production lot of a vessel, tracked; null when it is in none.</summary>
    public static async Task<ProductionLot?> FindLotOfAsync(
        this WeldTraceDbContext db,
        Vessel vessel,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(vessel);
        return vessel.LotId is { } id
            ? await db.ProductionLots.SingleAsync(l => l.Id == id, cancellation)
            : null;
    }

    /// <summary>All vessels of a lot by serial, tracked.</summary>
    public static Task<List<Vessel>> LoadVesselsOfLotAsync(
        this WeldTraceDbContext db,
        ProductionLot lot,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(lot);
        return db
            .Vessels.Where(v => v.LotId == lot.Id)
            .OrderBy(v => v.Serial)
            .ToListAsync(cancellation);
    }

    /// <summary>Takes a signed test to the lot of its vessel, when the vessel is a sample; what follows is added to the same save.</summary>
    /// <param name="db">Context of the signature.</param>
    /// <param name="test">Signed test.</param>
    /// <param name="vessel">Its vessel.</param>
    /// <param name="actor">Who signed.</param>
    /// <param name="at">UTC instant.</param>
    /// <param name="cancellation">Nothing is saved.</param>
    public static async Task TakeSampleAsync(
        this WeldTraceDbContext db,
        TestRecord test,
        Vessel vessel,
        Actor actor,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(vessel);
        if (
            vessel.Sample is not null
            && (test as ISampleTest)?.AsSample() is { } result
            && await db.FindLotOfAsync(vessel, cancellation) is { } lot
        )
        {
            var vessels = await db.LoadVesselsOfLotAsync(lot, cancellation);
            db.AddRange(lot.TakeResult(result, test, vessels, actor, at));
        }
    }

    /// <summary>
    /// Takes a signed laboratory test to the vessel that its sample is of, or to the lot that it stands for: a sample of no vessel, or of
    /// a vessel that is sacrificed for its lot. What follows is added to the same save.
    /// </summary>
    /// <param name="db">Context of the signature.</param>
    /// <param name="test">Signed test.</param>
    /// <param name="vessel">Its vessel; null when it stands for a lot.</param>
    /// <param name="actor">Who signed.</param>
    /// <param name="cancellation">Nothing is saved.</param>
    public static async Task TakeLaboratoryAsync(
        this WeldTraceDbContext db,
        LaboratoryTest test,
        Vessel? vessel,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(test);
        List<Vessel> concerned = vessel is null ? [] : [vessel];
        if (vessel is null or { Sample: not null })
        {
            var lot = await db.ProductionLots.SingleOrDefaultAsync(
                l => l.Number == test.ProductionLot,
                cancellation
            );
            lot?.TakeLaboratory(test.AsLotResult(), actor, test.SignedAt);
            concerned = await db
                .Vessels.Where(v => v.ProductionLot == test.ProductionLot)
                .OrderBy(v => v.Serial)
                .ToListAsync(cancellation);
        }

        db.AddRange(test.FindingsOn(concerned, actor, test.SignedAt));
    }

    /// <summary>What the lot's samples and proof tests show now, with the workings.</summary>
    public static async Task<(
        LotStatement Statement,
        IReadOnlyList<Working> Workings
    )> StateLotAsync(this WeldTraceDbContext db, ProductionLot lot, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(lot);
        var design = await db
            .VesselDesigns.AsNoTracking()
            .SingleAsync(d => d.Id == lot.DesignId, cancellation);
        var ids = lot.ConcernedVessels;
        var proofs = await db
            .PressureTests.AsNoTracking()
            .Where(t => ids.Contains(t.VesselId) && t.SignedAt != null)
            .Select(t => new { t.VesselId, t.Verdict })
            .ToListAsync(cancellation);
        // A vessel that failed once counts as failed, whatever it did when it was tested again.
        var byVessel = proofs.GroupBy(t => t.VesselId).ToList();
        var passed = byVessel.Count(v => v.All(t => t.Verdict == Verdict.Pass));
        return LotStatistics.State(
            lot,
            design.Content.Pressures.Meop,
            passed,
            byVessel.Count - passed
        );
    }
}
