using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Welding;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.LogJudging;

/// <summary>A process log of a test piece, read and judged; or the problems that it has.</summary>
public sealed record JudgedPieceLog(
    ProcessLog? Log,
    LogSummary? Summary,
    LogMapping? Mapping,
    IReadOnlyList<LogProblem> Problems
);

/// <summary>Reads the process log of a test piece with the columns that the machine is known for, else as they seem to mean.</summary>
public static class TestPieceLog
{
    public static async Task<JudgedPieceLog> ReadAsync(
        Stream file,
        string fileName,
        Machine machine,
        (QualificationRecord Record, PlannedPiece Planned, ProcedureContent Content) plan,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(machine);
        var looked = await LogPreview.ReadAsync(file, null, cancellation);
        if (looked.Preview is not { } preview)
        {
            return new(null, null, null, looked.Problems);
        }

        var mapping = machine.Remembered() ?? preview.Guess;
        file.Position = 0;
        var read = await ProcessLogReader.ReadAsync(file, mapping, null, cancellation);
        if (read.Log is not { } log)
        {
            return new(null, null, null, read.Problems);
        }

        var evaluation = LogEvaluation.Evaluate(
            log,
            RunPlan.For(plan.Record, plan.Planned, plan.Content) with
            {
                Filters = mapping.Filters,
            }
        );
        var summary = RunSummary.Of(
            fileName,
            log,
            evaluation,
            (Engineering.Quantities.Length?)null,
            plan.Planned.Of(plan.Content)
        );
        return new(log, summary, mapping, evaluation.Problems);
    }
}
