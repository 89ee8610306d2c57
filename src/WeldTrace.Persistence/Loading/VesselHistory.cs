using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Archiving;
using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Persistence.Loading;

/// <summary>Everything recorded about one vessel.</summary>
public sealed record VesselHistory(
    Vessel Vessel,
    VesselDesign Design,
    IReadOnlyList<WeldRun> Runs,
    IReadOnlyList<LeakTest> LeakTests,
    IReadOnlyList<PressureTest> PressureTests,
    IReadOnlyList<SectionExamination> Sections,
    IReadOnlyList<StepSignOff> SignOffs,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<Signature> Signatures
)
{
    /// <summary>What the vessel is made of, and what was done to it before welding.</summary>
    public VesselMaterial Material { get; init; } = VesselMaterial.None;

    /// <summary>Its production lot; null when it is in none.</summary>
    public ProductionLot? Lot { get; init; }

    /// <summary>Laboratory tests of samples of the vessel, and of its lot.</summary>
    public IReadOnlyList<LaboratoryTest> Laboratory { get; init; } = [];

    /// <summary>Rules that were waived for its steps, or asked to be.</summary>
    public IReadOnlyList<Concession> Concessions { get; init; } = [];

    /// <summary>Reviews of signals that control charts showed of its runs.</summary>
    public IReadOnlyList<SignalReview> SignalReviews { get; init; } = [];

    /// <summary>Archives of its files and process logs.</summary>
    public IReadOnlyList<VesselArchive> Archives { get; init; } = [];

    /// <summary>Everyone who welded on the vessel.</summary>
    public IReadOnlyCollection<Guid> WeldedBy => [.. Runs.Select(r => r.OperatorId).Distinct()];

    /// <summary>The vessel's own records, signatures left out.</summary>
    public IEnumerable<Record> Records =>
        [
            Vessel,
            .. Material.OwnRecords,
            .. Concessions,
            .. Runs,
            .. SignalReviews,
            .. LeakTests,
            .. PressureTests,
            .. Sections,
            .. Laboratory,
            .. SignOffs,
            .. Findings,
            .. Archives,
        ];

    /// <summary>Signatures of one record, oldest first.</summary>
    public IReadOnlyList<Signature> SignaturesOf(Record record) =>
        [.. Signatures.Where(s => s.SignedId == record.Id)];
}

public static class VesselHistoryLoading
{
    /// <summary>The history of the vessel of a serial number, to be read only; null when there is none.</summary>
    public static async Task<VesselHistory?> FindVesselHistoryAsync(
        this WeldTraceDbContext db,
        string serial,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var vessel = await db
            .Vessels.AsNoTracking()
            .SingleOrDefaultAsync(v => v.Serial == serial, cancellation);
        if (vessel is null)
        {
            return null;
        }

        var id = vessel.Id;
        return new VesselHistory(
            vessel,
            await db
                .VesselDesigns.AsNoTracking()
                .SingleAsync(d => d.Id == vessel.DesignId, cancellation),
            await db
                .WeldRuns.AsNoTracking()
                .Where(r => r.VesselId == id)
                .OrderBy(r => r.StartedAt)
                .ToListAsync(cancellation),
            await db
                .LeakTests.AsNoTracking()
                .Where(t => t.VesselId == id)
                .OrderBy(t => t.TestedAt)
                .ToListAsync(cancellation),
            await db
                .PressureTests.AsNoTracking()
                .Where(t => t.VesselId == id)
                .OrderBy(t => t.TestedAt)
                .ToListAsync(cancellation),
            await db
                .Sections.AsNoTracking()
                .Where(t => t.VesselId == id)
                .OrderBy(t => t.TestedAt)
                .ToListAsync(cancellation),
            await SignOffsAsync(db, id, cancellation),
            await db
                .Findings.AsNoTracking()
                .Where(f => f.VesselId == id)
                .OrderBy(f => f.Number)
                .ToListAsync(cancellation),
            await SignaturesAsync(db, id, cancellation)
        )
        {
            Material = await db.LoadMaterialAsync(vessel, cancellation),
            Lot = await db.FindLotOfAsync(vessel, cancellation),
            Laboratory = await LaboratoryAsync(db, vessel, cancellation),
            Concessions = await ConcessionsAsync(db, id, cancellation),
            SignalReviews = await SignalReviewsAsync(db, id, cancellation),
            Archives = await ArchivesAsync(db, id, cancellation),
        };
    }

    private static async Task<List<LaboratoryTest>> LaboratoryAsync(
        WeldTraceDbContext db,
        Vessel vessel,
        CancellationToken cancellation
    ) =>
        await db
            .LaboratoryTests.AsNoTracking()
            .Where(t =>
                t.VesselId == vessel.Id
                || (t.VesselId == null && t.ProductionLot == vessel.ProductionLot)
            )
            .OrderBy(t => t.Id)
            .ToListAsync(cancellation);

    private static async Task<List<Concession>> ConcessionsAsync(
        WeldTraceDbContext db,
        Guid vesselId,
        CancellationToken cancellation
    ) =>
        await db
            .Concessions.AsNoTracking()
            .Where(c => c.VesselId == vesselId)
            .OrderBy(c => c.Id)
            .ToListAsync(cancellation);

    private static async Task<List<StepSignOff>> SignOffsAsync(
        WeldTraceDbContext db,
        Guid vesselId,
        CancellationToken cancellation
    ) =>
        await db
            .StepSignOffs.AsNoTracking()
            .Where(s => s.VesselId == vesselId)
            .OrderBy(s => s.At)
            .ToListAsync(cancellation);

    private static async Task<List<SignalReview>> SignalReviewsAsync(
        WeldTraceDbContext db,
        Guid vesselId,
        CancellationToken cancellation
    ) =>
        await db
            .SignalReviews.AsNoTracking()
            .Where(r => r.VesselId == vesselId)
            .OrderBy(r => r.At)
            .ToListAsync(cancellation);

    private static async Task<List<VesselArchive>> ArchivesAsync(
        WeldTraceDbContext db,
        Guid vesselId,
        CancellationToken cancellation
    ) =>
        await db
            .VesselArchives.AsNoTracking()
            .Where(a => a.VesselId == vesselId)
            .OrderBy(a => a.At)
            .ToListAsync(cancellation);

    // The ledger's index knows which signatures speak of a vessel.
    private static async Task<List<Signature>> SignaturesAsync(
        WeldTraceDbContext db,
        Guid vesselId,
        CancellationToken cancellation
    )
    {
        var ids = db
            .LedgerEntries.Where(e => e.Vessels.Contains(vesselId) && e.RecordKind == "signature")
            .Select(e => e.RecordId);
        return await db
            .Signatures.AsNoTracking()
            .Where(s => ids.Contains(s.Id))
            .OrderBy(s => s.At)
            .ToListAsync(cancellation);
    }
}
