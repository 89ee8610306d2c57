using Microsoft.EntityFrameworkCore;
using Npgsql;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Persistence.RunFigures;

/// <summary>Keeps the figures of runs beside them and finds those of many runs at once.</summary>
public static class RunFigureStorage
{
    // Answered by the index alone, which holds these columns too.
    private const string Latest = """
        SELECT run_id, started_at, machine_id, tool_id, operator_id, mean_si, standard_deviation_si, tool_metres
        FROM run_figures
        WHERE procedure_revision_id = $1 AND parameter = $2
            AND ($3::uuid IS NULL OR machine_id = $3) AND ($4::uuid IS NULL OR tool_id = $4)
            AND ($5::uuid IS NULL OR operator_id = $5)
        ORDER BY started_at DESC
        LIMIT $6
        """;

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
        Statement<RunFigureRow> latest = new(
            Latest,
            row => Row(row, revision, parameter),
            revision,
            parameter.ToString(),
            filter.MachineId,
            filter.ToolId,
            filter.OperatorId,
            most
        );
        await db.ReadPreparedAsync([latest], cancellation);
        latest.Rows.Reverse();
        return latest.Rows;
    }

    private static RunFigureRow Row(NpgsqlDataReader row, Guid revision, WeldParameter parameter) =>
        new()
        {
            Parameter = parameter,
            ProcedureRevisionId = revision,
            RunId = row.GetGuid(0),
            StartedAt = row.GetFieldValue<DateTimeOffset>(1),
            MachineId = row.GetGuid(2),
            ToolId = row.GetGuid(3),
            OperatorId = row.GetGuid(4),
            MeanSi = row.GetDouble(5),
            StandardDeviationSi = row.GetDouble(6),
            ToolMetres = row.GetDouble(7),
        };
}

/// <summary>What runs share beside their procedure revision; null means any.</summary>
public sealed record RunFigureFilter(Guid? MachineId, Guid? ToolId, Guid? OperatorId);
