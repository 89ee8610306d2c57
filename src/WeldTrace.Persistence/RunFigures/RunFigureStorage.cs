using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;

namespace WeldTrace.Persistence.RunFigures;

/// <summary>Keeps the figures of runs beside them and finds those of many runs at once.</summary>
public static class RunFigureStorage
{
    /// <summary>Keeps the figures of a judged run with the next save; those of an earlier judgement are replaced. A repair weld is short and of its own kind: it has none.</summary>
    /// <param name="db">Context that holds the run.</param>
    /// <param name="run">The run with its log.</param>
    /// <param name="tool">Its tool, charged with the run.</param>
    /// <param name="cancellation">Ends the looking up.</param>
    public static async Task KeepRunFiguresAsync(
        this WeldTraceDbContext db,
        WeldRun run,
        Tool tool,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(tool);
        if (run.Repair is not null)
        {
            return;
        }

        var kept = await db.RunFigures.Where(f => f.RunId == run.Id).ToListAsync(cancellation);
        var metres = tool
            .Uses.TakeWhile(u => u.RunId != run.Id)
            .Concat(tool.Uses.Where(u => u.RunId == run.Id))
            .Sum(u => u.Length.Metres);
        foreach (var found in run.Log?.Parameters ?? [])
        {
            if (kept.Find(f => f.Parameter == found.Parameter) is { } known)
            {
                (known.MeanSi, known.StandardDeviationSi, known.ToolMetres) = (
                    found.MeanSi,
                    found.StandardDeviationSi,
                    metres
                );
                continue;
            }

            db.Add(
                new RunFigureRow
                {
                    RunId = run.Id,
                    Parameter = found.Parameter,
                    StartedAt = run.StartedAt,
                    ProcedureRevisionId = run.ProcedureRevisionId,
                    MachineId = run.MachineId,
                    ToolId = run.ToolId,
                    OperatorId = run.OperatorId,
                    MeanSi = found.MeanSi,
                    StandardDeviationSi = found.StandardDeviationSi,
                    ToolMetres = metres,
                }
            );
        }
    }

    /// <summary>The latest runs of a procedure revision, in order of time.</summary>
    /// <param name="db">Context.</param>
    /// <param name="revision">Procedure revision.</param>
    /// <param name="parameter">Parameter.</param>
    /// <param name="filter">What else they share.</param>
    /// <param name="most">Most runs.</param>
    /// <param name="cancellation">Ends the reading.</param>
    public static async Task<IReadOnlyList<RunFigureRow>> FindRunFiguresAsync(
        this WeldTraceDbContext db,
        Guid revision,
        WeldParameter parameter,
        RunFigureFilter filter,
        int most,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(filter);
        var figures = db
            .RunFigures.AsNoTracking()
            .Where(f => f.ProcedureRevisionId == revision && f.Parameter == parameter);
        figures = filter.MachineId is { } machine
            ? figures.Where(f => f.MachineId == machine)
            : figures;
        figures = filter.ToolId is { } tool ? figures.Where(f => f.ToolId == tool) : figures;
        figures = filter.OperatorId is { } welder
            ? figures.Where(f => f.OperatorId == welder)
            : figures;
        var latest = await figures
            .OrderByDescending(f => f.StartedAt)
            .Take(most)
            .ToListAsync(cancellation);
        latest.Reverse();
        return latest;
    }
}

/// <summary>What runs share beside their procedure revision; null means any.</summary>
public sealed record RunFigureFilter(Guid? MachineId, Guid? ToolId, Guid? OperatorId);
