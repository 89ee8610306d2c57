using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Persistence.Loading;

/// <summary>A run since a production test.</summary>
internal sealed record RunSince(
    Guid TestId,
    DateTimeOffset StartedAt,
    Length PlannedPath,
    Length? Travelled
);

/// <summary>A finding of what was welded since a production test.</summary>
internal sealed record FoundSince(Guid TestId, FindingOrigin Origin);

/// <summary>What is asked about production tests in the round trip of others: the newest test, and what happened since.</summary>
internal sealed class ProductionQuestions
{
    private readonly Answer<ProductionTest> _last;
    private readonly Answer<RunSince> _runs;
    private readonly Answer<FoundSince> _found;

    /// <param name="trip">Round trip.</param>
    /// <param name="db">Context.</param>
    /// <param name="tests">Tests of some machines to some procedure revisions.</param>
    public ProductionQuestions(
        RoundTrip trip,
        WeldTraceDbContext db,
        IQueryable<ProductionTest> tests
    )
    {
        var last = tests.Where(t =>
            !db.ProductionTests.Any(later =>
                later.MachineId == t.MachineId
                && later.ProcedureRevisionId == t.ProcedureRevisionId
                && later.At > t.At
            )
        );
        _last = trip.Ask(last.AsNoTracking());
        var since =
            from test in last
            from run in db.WeldRuns
            where
                run.MachineId == test.MachineId
                && run.ProcedureRevisionId == test.ProcedureRevisionId
                && run.StartedAt >= test.At
            select new { Test = test, Run = run };
        _runs = trip.Ask(
            since.Select(s => new RunSince(
                s.Test.Id,
                s.Run.StartedAt,
                s.Run.PlannedPath,
                s.Run.Travelled
            ))
        );
        // A run is the evidence of its own findings; a test speaks of the vessel.
        _found = trip.Ask(
            (
                from welded in since
                from finding in db.Findings
                where
                    finding.VesselId == welded.Run.VesselId
                    && finding.OpenedAt >= welded.Test.At
                    && (finding.EvidenceId == welded.Run.Id || finding.EvidenceKind != "weld-run")
                select new FoundSince(welded.Test.Id, finding.Origin)
            ).Distinct()
        );
    }

    /// <summary>What happened on a machine, welding to a procedure revision; nothing is counted where no test was ever made.</summary>
    public ProductionSince Answered(Guid machine, Guid procedure)
    {
        var last = _last.Rows.FirstOrDefault(t =>
            t.MachineId == machine && t.ProcedureRevisionId == procedure
        );
        var runs = _runs.Rows.Where(r => r.TestId == last?.Id).ToList();
        return new ProductionSince(
            last,
            Length.FromSi(runs.Sum(r => (r.Travelled ?? r.PlannedPath).SiValue)),
            runs.Count == 0 ? null : runs.Min(r => r.StartedAt),
            [.. _found.Rows.Where(f => f.TestId == last?.Id).Select(f => f.Origin)]
        );
    }
}
