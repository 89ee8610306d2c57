using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Persistence.Loading;

/// <summary>A run since the oldest of the tests.</summary>
internal sealed record RunSince(
    Guid Id,
    Guid VesselId,
    Guid MachineId,
    Guid ProcedureRevisionId,
    DateTimeOffset StartedAt,
    Length PlannedPath,
    Length? Travelled
);

/// <summary>A finding since.</summary>
internal sealed record FoundSince(
    Guid VesselId,
    Guid? EvidenceId,
    string? EvidenceKind,
    DateTimeOffset OpenedAt,
    FindingOrigin Origin
);

/// <summary>What is asked about production tests in the round trip of others: the newest test, and what happened since.</summary>
internal sealed class ProductionQuestions
{
    private readonly Answer<ProductionTest> _last;
    private readonly Answer<RunSince> _runs;
    private readonly Answer<FoundSince> _found;

    /// <param name="trip">Round trip.</param>
    /// <param name="db">Context.</param>
    /// <param name="machines">Machines.</param>
    /// <param name="procedures">Procedure revisions.</param>
    /// <param name="now">UTC instant up to which production counts.</param>
    public ProductionQuestions(
        RoundTrip trip,
        WeldTraceDbContext db,
        IQueryable<Guid> machines,
        IQueryable<Guid> procedures,
        DateTimeOffset now
    )
    {
        var last = db.ProductionTests.Where(t =>
            machines.Contains(t.MachineId)
            && procedures.Contains(t.ProcedureRevisionId)
            && !db.ProductionTests.Any(later =>
                later.MachineId == t.MachineId
                && later.ProcedureRevisionId == t.ProcedureRevisionId
                && later.At > t.At
            )
        );
        _last = trip.Ask(last.AsNoTracking());
        // One bound for all of them, and an end: so the database expects few rows, and takes them by their time. Which of them belong
        // to which test is told here.
        var since = last.Select(t => (DateTimeOffset?)t.At);
        _runs = trip.Ask(
            db.WeldRuns.Where(r =>
                    machines.Contains(r.MachineId)
                    && r.StartedAt >= since.Min()
                    && r.StartedAt <= now
                )
                .Select(r => new RunSince(
                    r.Id,
                    r.VesselId,
                    r.MachineId,
                    r.ProcedureRevisionId,
                    r.StartedAt,
                    r.PlannedPath,
                    r.Travelled
                ))
        );
        _found = trip.Ask(
            db.Findings.Where(f => f.OpenedAt >= since.Min() && f.OpenedAt <= now)
                .Select(f => new FoundSince(
                    f.VesselId,
                    f.EvidenceId,
                    f.EvidenceKind,
                    f.OpenedAt,
                    f.Origin
                ))
        );
    }

    /// <summary>What happened on a machine, welding to a procedure revision; nothing is counted where no test was ever made.</summary>
    public ProductionSince Answered(Guid machine, Guid procedure)
    {
        if (
            _last.Rows.FirstOrDefault(t =>
                t.MachineId == machine && t.ProcedureRevisionId == procedure
            )
            is not { } last
        )
        {
            return new ProductionSince(null, Length.Zero, null, []);
        }

        var runs = _runs
            .Rows.Where(r =>
                r.MachineId == machine
                && r.ProcedureRevisionId == procedure
                && r.StartedAt >= last.At
            )
            .ToList();
        return new ProductionSince(
            last,
            Length.FromSi(runs.Sum(r => (r.Travelled ?? r.PlannedPath).SiValue)),
            runs.Count == 0 ? null : runs.Min(r => r.StartedAt),
            [.. Found(last, runs).Distinct()]
        );
    }

    // A run is the evidence of its own findings; a test speaks of the vessel.
    private IEnumerable<FindingOrigin> Found(ProductionTest last, IReadOnlyList<RunSince> runs)
    {
        var ids = runs.Select(r => (Guid?)r.Id).ToHashSet();
        var vessels = runs.Select(r => r.VesselId).ToHashSet();
        return _found
            .Rows.Where(f =>
                f.OpenedAt >= last.At
                && (
                    f.EvidenceKind == "weld-run"
                        ? ids.Contains(f.EvidenceId)
                        : vessels.Contains(f.VesselId)
                )
            )
            .Select(f => f.Origin);
    }
}
