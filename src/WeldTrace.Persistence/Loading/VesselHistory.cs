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

        RoundTrip trip = new(db);
        HistoryQuestions questions = new(trip, db, vessel);
        await trip.RunAsync(cancellation);
        return questions.Answered;
    }
}
