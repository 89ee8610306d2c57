using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Welding.AcrossRuns;

/// <summary>A thing that runs share, to choose from.</summary>
public sealed record SharedThing(Guid Id, string Label);

/// <summary>One run among many.</summary>
/// <param name="Figure">Its figure.</param>
/// <param name="Label">Vessel, joint and pass.</param>
/// <param name="Reviews">Reviews of its signals for the parameter that is shown, oldest first.</param>
public sealed record RunAmongMany(
    RunFigureRow Figure,
    string Label,
    IReadOnlyList<SignalReview> Reviews
);

/// <summary>What the page shows.</summary>
public sealed record AcrossRunsView
{
    public required IReadOnlyList<SharedThing> Procedures { get; init; }

    public required IReadOnlyList<SharedThing> Machines { get; init; }

    public required IReadOnlyList<SharedThing> Tools { get; init; }

    public required IReadOnlyList<SharedThing> Operators { get; init; }

    /// <summary>The chosen revision; null when there is none with logs.</summary>
    public required ProcedureRevision? Revision { get; init; }

    public required IReadOnlyList<RunAmongMany> Runs { get; init; }
}

/// <summary>Loads one parameter of the latest runs of a procedure revision.</summary>
public sealed class AcrossRunsReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    public async Task<AcrossRunsView> FindAsync(
        AcrossRunsQuery query,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var procedures = await db
            .ProcedureRevisions.AsNoTracking()
            .Where(p => db.RunFigures.Any(f => f.ProcedureRevisionId == p.Id))
            .OrderBy(p => p.Number)
            .ThenByDescending(p => p.RevisionIndex)
            .ToListAsync(cancellation);
        var revision = procedures.Find(p => p.Id == query.Procedure) ?? procedures.FirstOrDefault();
        var figures = revision is null
            ? []
            : await db.FindRunFiguresAsync(
                revision.Id,
                query.Parameter,
                query.Filter,
                RunSignals.MostRuns,
                cancellation
            );
        return new AcrossRunsView
        {
            Procedures = [.. procedures.Select(p => new SharedThing(p.Id, p.Label))],
            Machines = await db
                .Machines.OrderBy(m => m.Name)
                .Select(m => new SharedThing(m.Id, m.Name))
                .ToListAsync(cancellation),
            Tools = await db
                .Tools.OrderBy(t => t.Mark)
                .Select(t => new SharedThing(t.Id, t.Mark))
                .ToListAsync(cancellation),
            Operators = await db
                .WeldRuns.Select(r => new { r.OperatorId, r.OperatorName })
                .Distinct()
                .OrderBy(o => o.OperatorName)
                .Select(o => new SharedThing(o.OperatorId, o.OperatorName))
                .ToListAsync(cancellation),
            Revision = revision,
            Runs = await NameAsync(db, figures, cancellation),
        };
    }

    private static async Task<IReadOnlyList<RunAmongMany>> NameAsync(
        WeldTraceDbContext db,
        IReadOnlyList<RunFigureRow> figures,
        CancellationToken cancellation
    )
    {
        Guid[] ids = [.. figures.Select(f => f.RunId)];
        var names = await db
            .WeldRuns.AsNoTracking()
            .Where(r => ids.Contains(r.Id))
            .Select(r => new
            {
                r.Id,
                r.VesselSerial,
                r.JointCode,
                r.PassNumber,
            })
            .ToDictionaryAsync(r => r.Id, cancellation);
        var reviews = (
            await db
                .SignalReviews.AsNoTracking()
                .Where(r => ids.Contains(r.RunId))
                .OrderBy(r => r.At)
                .ToListAsync(cancellation)
        ).ToLookup(r => (r.RunId, r.Seen.Parameter));
        return
        [
            .. figures.Select(f => new RunAmongMany(
                f,
                $"{names[f.RunId].VesselSerial} {names[f.RunId].JointCode} pass {names[f.RunId].PassNumber}",
                [.. reviews[(f.RunId, f.Parameter)]]
            )),
        ];
    }
}
