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

/// <summary>Everything recorded about one vessel, to be read only: one question for each kind of record, all in one round trip.</summary>
internal sealed class HistoryQuestions
{
    private readonly Vessel _vessel;
    private readonly Answer<VesselDesign> _designs;
    private readonly Answer<ProductionLot> _lots;
    private readonly Answer<WeldRun> _runs;
    private readonly Answer<LeakTest> _leakTests;
    private readonly Answer<PressureTest> _pressureTests;
    private readonly Answer<SectionExamination> _sections;
    private readonly Answer<LaboratoryTest> _laboratory;
    private readonly Answer<LaboratoryTest> _laboratoryOfLot;
    private readonly Answer<StepSignOff> _signOffs;
    private readonly Answer<Finding> _findings;
    private readonly Answer<Signature> _signatures;
    private readonly Answer<Concession> _concessions;
    private readonly Answer<SignalReview> _reviews;
    private readonly Answer<VesselArchive> _archives;
    private readonly MaterialQuestions _material;

    public HistoryQuestions(RoundTrip trip, WeldTraceDbContext db, Vessel vessel)
    {
        _vessel = vessel;
        var id = vessel.Id;
        _designs = trip.Ask(db.VesselDesigns.AsNoTracking().Where(d => d.Id == vessel.DesignId));
        _lots = trip.Ask(db.ProductionLots.AsNoTracking().Where(l => l.Id == vessel.LotId));
        _runs = trip.Ask(
            db.WeldRuns.AsNoTracking().Where(r => r.VesselId == id).OrderBy(r => r.StartedAt)
        );
        _leakTests = trip.Ask(TestsOf(db.LeakTests, id));
        _pressureTests = trip.Ask(TestsOf(db.PressureTests, id));
        _sections = trip.Ask(TestsOf(db.Sections, id));
        // Two questions, each answered by an index of its own.
        _laboratory = trip.Ask(db.LaboratoryTests.AsNoTracking().Where(t => t.VesselId == id));
        _laboratoryOfLot = trip.Ask(
            db.LaboratoryTests.AsNoTracking()
                .Where(t => t.VesselId == null && t.ProductionLot == vessel.ProductionLot)
        );
        _signOffs = trip.Ask(
            db.StepSignOffs.AsNoTracking().Where(s => s.VesselId == id).OrderBy(s => s.At)
        );
        _findings = trip.Ask(
            db.Findings.AsNoTracking().Where(f => f.VesselId == id).OrderBy(f => f.Number)
        );
        // The index over the vessels of a signature knows only containment.
        _signatures = trip.Ask(
            db.Signatures.FromSql(
                    $"SELECT * FROM signatures WHERE vessels @> jsonb_build_array({id})"
                )
                .AsNoTracking()
                .OrderBy(s => s.At)
        );
        _concessions = trip.Ask(
            db.Concessions.AsNoTracking().Where(c => c.VesselId == id).OrderBy(c => c.Id)
        );
        _reviews = trip.Ask(
            db.SignalReviews.AsNoTracking().Where(r => r.VesselId == id).OrderBy(r => r.At)
        );
        _archives = trip.Ask(
            db.VesselArchives.AsNoTracking().Where(a => a.VesselId == id).OrderBy(a => a.At)
        );
        _material = new(trip, db, vessel.Serial);
    }

    public VesselHistory Answered =>
        new(
            _vessel,
            _designs.Rows.Single(),
            _runs.Rows,
            _leakTests.Rows,
            _pressureTests.Rows,
            _sections.Rows,
            _signOffs.Rows,
            _findings.Rows,
            _signatures.Rows
        )
        {
            Material = _material.Answered,
            Lot = _lots.Single,
            Laboratory = [.. _laboratory.Rows.Concat(_laboratoryOfLot.Rows).OrderBy(t => t.Id)],
            Concessions = _concessions.Rows,
            SignalReviews = _reviews.Rows,
            Archives = _archives.Rows,
        };

    private static IQueryable<TTest> TestsOf<TTest>(IQueryable<TTest> tests, Guid vessel)
        where TTest : TestRecord =>
        tests.AsNoTracking().Where(t => t.VesselId == vessel).OrderBy(t => t.TestedAt);
}
