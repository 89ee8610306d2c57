using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Loading;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.Persistence.RunFigures;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Features.Welding.CorrectPhases;

/// <summary>Judges the kept log of a run anew, by phases that an engineer states.</summary>
public sealed class CorrectPhasesHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SignalWatch signals,
    TimeProvider clock
)
{
    /// <summary>The run; null when there is none.</summary>
    public async Task<WeldRun?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.WeldRuns.AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, cancellation);
    }

    public async Task<Outcome> HandleAsync(
        Guid id,
        CorrectPhasesForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        List<Refusal> refusals = [];
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        if (await db.FindRunAsync(id, cancellation) is not { } records)
        {
            return Outcome.Refused("run", "There is no such run.");
        }

        var may = records.Run.MayCorrectPhases(actor);
        if (!may.IsAccepted)
        {
            return may;
        }

        if (form.Read(refusals) is not { } bounds)
        {
            return Outcome.From(refusals);
        }

        var log =
            await db.FindProcessLogAsync(id, cancellation)
            ?? throw new InvalidDataException($"The samples of {records.Run.Label} are missing.");
        var (run, content) = (records.Run, records.Revision.Content);
        var evaluation = Judge(log, records, bounds);
        var findings = run.CorrectPhases(
            RunSummary.Of(run.Log!.FileName, log, evaluation, run, content),
            form.Reason ?? "",
            content.Windows,
            records.Vessel,
            records.Tool,
            actor,
            clock.GetUtcNow()
        );
        if (!findings.IsAccepted)
        {
            return findings.WithoutValue();
        }

        db.AddRange(findings.Value);
        await db.KeepRunFiguresAsync(run, records.Tool, cancellation);
        var saved = await db.SaveAsync(cancellation);
        if (saved.IsAccepted)
        {
            signals.Judged(run.ProcedureRevisionId);
        }

        return saved;
    }

    // Judged again in the same way, whatever the machine's mapping says by now.
    private static LogEvaluation Judge(ProcessLog log, RunRecords records, StatedBounds bounds) =>
        LogEvaluation.Evaluate(
            log,
            RunPlan.For(records.Run, records.Pass, records.Revision.Content) with
            {
                Bounds = bounds,
                Filters = (records.Run.Log!.Filters ?? []).ToDictionary(
                    judged => MachineColumns.Channel(judged.Channel),
                    judged => judged.Filter
                ),
            }
        );
}
