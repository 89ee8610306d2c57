using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Welding.ReviewSignal;

/// <summary>A signal with what was said of it.</summary>
/// <param name="Run">Run.</param>
/// <param name="Seen">What the charts say of it now.</param>
/// <param name="Reviews">Earlier reviews for the same parameter, oldest first.</param>
/// <param name="Findings">Findings of the run's vessel, by number.</param>
public sealed record SignalView(
    WeldRun Run,
    SeenSignal Seen,
    IReadOnlyList<SignalReview> Reviews,
    IReadOnlyList<Finding> Findings
);

/// <summary>Loads what the charts say of one run among those that share something with it.</summary>
public sealed class ReviewSignalReader(IDbContextFactory<WeldTraceDbContext> contexts)
{
    /// <summary>The signal; null when there is no such run, or no figure of it among those chosen.</summary>
    public async Task<SignalView?> FindAsync(
        Guid runId,
        WeldParameter parameter,
        RunFigureFilter filter,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(filter);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        if (await db.WeldRuns.SingleOrDefaultAsync(r => r.Id == runId, cancellation) is not { } run)
        {
            return null;
        }

        var figures = await db.FindRunFiguresAsync(
            run.ProcedureRevisionId,
            parameter,
            filter,
            RunSignals.MostRuns,
            cancellation
        );
        var index = figures.ToList().FindIndex(f => f.RunId == runId);
        if (index < 0)
        {
            return null;
        }

        var reviews = await db
            .SignalReviews.Where(r => r.RunId == runId)
            .OrderBy(r => r.At)
            .ToListAsync(cancellation);
        return new SignalView(
            run,
            await SeenAsync(db, run, figures, index, filter, cancellation),
            [.. reviews.Where(r => r.Seen.Parameter == parameter)],
            await db
                .Findings.Where(f => f.VesselId == run.VesselId)
                .OrderBy(f => f.Number)
                .ToListAsync(cancellation)
        );
    }

    private static async Task<SeenSignal> SeenAsync(
        WeldTraceDbContext db,
        WeldRun run,
        IReadOnlyList<RunFigureRow> figures,
        int index,
        RunFigureFilter filter,
        CancellationToken cancellation
    )
    {
        var revision = await db.ProcedureRevisions.SingleAsync(
            p => p.Id == run.ProcedureRevisionId,
            cancellation
        );
        var figure = figures[index];
        var unit = RunSignals.UnitOf(figure.Parameter, revision.Content);
        return new SeenSignal(
            figure.Parameter,
            (decimal)ParameterUnits.FromSi(figure.Parameter, figure.MeanSi, unit),
            unit,
            RunSignals.Of(figures, figure.Parameter, revision.Content)?.Of(index) ?? [],
            figures.Count,
            SharedBy(run, filter)
        );
    }

    private static string SharedBy(WeldRun run, RunFigureFilter filter) =>
        string.Join(
            ", ",
            new[]
            {
                run.ProcedureLabel,
                filter.MachineId is null ? null : $"machine {run.MachineName}",
                filter.ToolId is null ? null : $"tool {run.ToolMark}",
                filter.OperatorId is null ? null : $"operator {run.OperatorName}",
            }.OfType<string>()
        );
}
