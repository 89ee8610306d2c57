using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.LogJudging;

/// <summary>What a judged log means phase by phase for the record of its run.</summary>
internal static class PhaseSummary
{
    public static IReadOnlyList<LoggedPhaseFigures> Of(
        LogEvaluation evaluation,
        ProcedureContent procedure
    ) =>
        [
            .. evaluation.PhaseFigures.Select(figures => new LoggedPhaseFigures(
                figures.Phase.ToString().ToLowerInvariant(),
                figures.Seconds,
                figures.Path.Metres,
                figures.SpindleEnergy?.Joules,
                PitchOf(figures),
                [
                    .. from window in procedure.Windows
                    from found in figures.Columns
                    where found.Channel == WatchedChannels.Of(window.Parameter)
                    select Parameter(window.Parameter, found),
                ],
                figures.Columns.FirstOrDefault(c => c.Channel == LogChannel.PlungeDepth)?.MaximumSi
            )),
        ];

    public static LoggedParameter Parameter(WeldParameter parameter, PhaseStatistics found) =>
        new(
            parameter,
            checked((int)found.Count),
            found.MinimumSi,
            found.MeanSi,
            found.MaximumSi,
            found.StandardDeviationSi,
            found.P1Si,
            found.MedianSi,
            found.P99Si,
            found.DriftSi,
            found.ChangeSi
        );

    private static double? PitchOf(PhaseFigures figures)
    {
        if (figures.Phase is not (TradePhase.Ramp or TradePhase.Traverse or TradePhase.Overlap))
        {
            return null;
        }

        var turns = Mean(figures, LogChannel.SpindleSpeed);
        return turns > 0 ? Mean(figures, LogChannel.TravelSpeed) / turns : null;
    }

    private static double? Mean(PhaseFigures figures, LogChannel channel) =>
        figures.Columns.FirstOrDefault(found => found.Channel == channel)?.MeanSi;
}
