using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.LogJudging;

/// <summary>The dwell before travel, against its window: from the first sample at depth to the first of the travel.</summary>
internal static class DwellOfRun
{
    /// <summary>What it was; nothing when the log can't tell.</summary>
    public static IEnumerable<LoggedParameter> Figures(LogEvaluation evaluation)
    {
        double[] seconds = [.. evaluation.Dwells.Select(d => d.Duration.TotalSeconds)];
        if (seconds.Length > 0)
        {
            yield return new LoggedParameter(
                WeldParameter.DwellTime,
                seconds.Length,
                seconds.Min(),
                seconds.Average(),
                seconds.Max(),
                seconds.Length == 1 ? 0 : Sample.Of(seconds).StandardDeviation
            );
        }
    }

    /// <summary>The dwells outside the window, or outside its warnings.</summary>
    /// <param name="evaluation">Judged log.</param>
    /// <param name="procedure">Procedure.</param>
    /// <param name="angleAt">Angle of a place of the path.</param>
    public static IEnumerable<LoggedExcursion> Excursions(
        LogEvaluation evaluation,
        ProcedureContent procedure,
        Func<Length, Angle> angleAt
    )
    {
        if (procedure.WindowOf(WeldParameter.DwellTime) is not { } window)
        {
            yield break;
        }

        foreach (var dwell in evaluation.Dwells)
        {
            if (window.PassedBy(dwell.Duration.TotalSeconds) is not { } passed)
            {
                continue;
            }

            var place = angleAt(PlaceAt(evaluation.SeamPoints, dwell.EndSeconds));
            yield return new LoggedExcursion(
                WeldParameter.DwellTime,
                passed.IsAbove,
                dwell.StartSeconds,
                dwell.EndSeconds,
                place,
                place,
                Length.Zero,
                dwell.Duration.TotalSeconds,
                LoggedPhase.Dwell,
                passed.IsWarning
            );
        }
    }

    // The tool stands: the last point before is where it is.
    private static Length PlaceAt(IReadOnlyList<SeamPoint> points, double seconds) =>
        points.LastOrDefault(p => p.Seconds <= seconds).Position;
}
