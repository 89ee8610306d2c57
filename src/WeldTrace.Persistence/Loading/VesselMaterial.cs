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
        RoundTrip trip = new(db);
        MaterialQuestions material = new(trip, db, vessel.Serial);
        await trip.RunAsync(cancellation);
        return material.Answered;
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
