using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.RunFigures;

namespace WeldTrace.Web.LogJudging;

/// <summary>Runs of a procedure revision whose signals for a parameter nobody has reviewed.</summary>
/// <param name="RevisionId">Procedure revision.</param>
/// <param name="Label">How a person names it.</param>
/// <param name="Parameter">Parameter.</param>
/// <param name="Runs">Number of the runs.</param>
public sealed record UnreviewedSignals(
    Guid RevisionId,
    string Label,
    WeldParameter Parameter,
    int Runs
);

/// <summary>
/// Knows the signals of all procedure revisions, as the page across runs shows them for all of their runs. The charts of a revision are
/// made when it is first asked about and again after one of its logs was judged, since any run may move the limits of all.
/// </summary>
public sealed class SignalWatch(IDbContextFactory<WeldTraceDbContext> contexts)
{
    private static readonly RunFigureFilter AnyRun = new(null, null, null);

    private readonly ConcurrentDictionary<Guid, int> _judged = [];
    private readonly ConcurrentDictionary<Guid, ChartedRevision> _charted = [];

    /// <summary>A log of the revision was judged: its charts are made again when they are next asked for.</summary>
    public void Judged(Guid revision) => _judged.AddOrUpdate(revision, 1, (_, times) => times + 1);

    /// <summary>What is not reviewed, by procedure and parameter.</summary>
    public async Task<IReadOnlyList<UnreviewedSignals>> FindUnreviewedAsync(
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        var revisions = await db
            .ProcedureRevisions.Where(p => db.RunFigures.Any(f => f.ProcedureRevisionId == p.Id))
            .Select(p => p.Id)
            .ToListAsync(cancellation);
        List<ChartedRevision> charted = [];
        foreach (var revision in revisions)
        {
            charted.Add(await ChartedAsync(db, revision, cancellation));
        }

        Guid[] runs = [.. charted.SelectMany(c => c.Signals).Select(s => s.RunId).Distinct()];
        var reviews = (
            await db.SignalReviews.Where(r => runs.Contains(r.RunId)).ToListAsync(cancellation)
        ).ToLookup(r => (r.RunId, r.Seen.Parameter));
        return
        [
            .. charted
                .OrderBy(c => c.Label, StringComparer.Ordinal)
                .SelectMany(c =>
                    c.Signals.Where(s =>
                            !SignalReview.Cover(reviews[(s.RunId, s.Parameter)], s.Signals)
                        )
                        .CountBy(s => s.Parameter)
                        .Select(p => new UnreviewedSignals(c.Id, c.Label, p.Key, p.Value))
                ),
        ];
    }

    private async Task<ChartedRevision> ChartedAsync(
        WeldTraceDbContext db,
        Guid id,
        CancellationToken cancellation
    )
    {
        // Counted before the figures are read, so that a log judged meanwhile makes them be read again.
        var judged = _judged.GetValueOrDefault(id);
        if (_charted.TryGetValue(id, out var known) && known.Judged == judged)
        {
            return known;
        }

        var revision = await db.ProcedureRevisions.SingleAsync(p => p.Id == id, cancellation);
        List<RunWithSignals> found = [];
        foreach (var parameter in WatchedChannels.Judged)
        {
            var figures = await db.FindRunFiguresAsync(
                id,
                parameter,
                AnyRun,
                RunSignals.MostRuns,
                cancellation
            );
            if (RunSignals.Of(figures, parameter, revision.Content) is { } signals)
            {
                found.AddRange(
                    figures
                        .Select((f, i) => new RunWithSignals(f.RunId, parameter, signals.Of(i)))
                        .Where(r => r.Signals.Count > 0)
                );
            }
        }

        return _charted[id] = new ChartedRevision(id, revision.Label, judged, found);
    }

    private sealed record ChartedRevision(
        Guid Id,
        string Label,
        int Judged,
        IReadOnlyList<RunWithSignals> Signals
    );

    private sealed record RunWithSignals(
        Guid RunId,
        WeldParameter Parameter,
        IReadOnlyList<RunSignal> Signals
    );
}
