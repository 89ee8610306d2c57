using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Preparation;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sites;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Persistence.Loading;

/// <summary>What a vessel is made of, and what was done to it before welding.</summary>
public sealed record VesselMaterial(
    IReadOnlyList<MaterialLot> Lots,
    IReadOnlyList<CutComponent> Components,
    IReadOnlyList<HeatTreatment> HeatTreatments,
    PreparationFacts Preparation,
    Site? Site
)
{
    public static VesselMaterial None { get; } =
        new([], [], [], new PreparationFacts([], []), null);

    /// <summary>What floor rule F7 looks at.</summary>
    public MaterialFacts Facts => new(Lots, HeatTreatments, Site?.RequiredDocument);

    /// <summary>The records about this vessel alone.</summary>
    public IEnumerable<Record> OwnRecords =>
        [.. Components, .. HeatTreatments, .. Preparation.Cleanings, .. Preparation.FitUps];
}

public static class VesselMaterialLoading
{
    /// <summary>The material of a vessel, to be read only.</summary>
    public static async Task<VesselMaterial> LoadMaterialAsync(
        this WeldTraceDbContext db,
        Vessel vessel,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(vessel);
        var lotIds = vessel.Components.Select(c => c.MaterialLotId).ToList();
        var componentIds = vessel.Components.Select(c => c.ComponentId).OfType<Guid>().ToList();
        return new VesselMaterial(
            await db
                .MaterialLots.AsNoTracking()
                .Where(l => lotIds.Contains(l.Id))
                .OrderBy(l => l.Number)
                .ToListAsync(cancellation),
            await db
                .Components.AsNoTracking()
                .Where(c => componentIds.Contains(c.Id))
                .OrderBy(c => c.Serial)
                .ToListAsync(cancellation),
            await db.FindHeatTreatmentsAsync([vessel.Id, .. componentIds], cancellation),
            new PreparationFacts(
                await db
                    .JointCleanings.AsNoTracking()
                    .Where(c => c.VesselId == vessel.Id)
                    .OrderBy(c => c.CleanedAt)
                    .ToListAsync(cancellation),
                await db
                    .JointFitUps.AsNoTracking()
                    .Where(f => f.VesselId == vessel.Id)
                    .OrderBy(f => f.MeasuredAt)
                    .ToListAsync(cancellation)
            ),
            await db.Sites.AsNoTracking().SingleOrDefaultAsync(cancellation)
        );
    }

    /// <summary>The heat treatments in which any of these components or vessels was treated, to be read only.</summary>
    public static async Task<IReadOnlyList<HeatTreatment>> FindHeatTreatmentsAsync(
        this WeldTraceDbContext db,
        IEnumerable<Guid> partIds,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(partIds);
        var parts = partIds.Select(id => $$"""[{"id":"{{id:D}}"}]""").ToArray();
        return await db
            .HeatTreatments.FromSql(
                $"SELECT * FROM heat_treatments WHERE parts @> ANY ({parts}::jsonb[])"
            )
            .AsNoTracking()
            .OrderBy(t => t.Number)
            .ToListAsync(cancellation);
    }
}
