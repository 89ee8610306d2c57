using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Signals;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.LogJudging;

/// <summary>The phases as the trade names them: the travel is ramp, traverse at speed, and overlap.</summary>
public static class ShownPhases
{
    public static IReadOnlyList<LoggedPhase> Of(LogEvaluation evaluation)
    {
        ArgumentNullException.ThrowIfNull(evaluation);
        return
        [
            .. evaluation
                .Phases.Where(p => p.Phase != WeldPhase.Idle)
                .SelectMany(p =>
                    p.Phase == WeldPhase.Traverse
                        ? Travel(p, evaluation)
                        :
                        [
                            new LoggedPhase(
                                p.Phase.ToString().ToLowerInvariant(),
                                p.First.TimeSeconds,
                                p.Next.TimeSeconds
                            ),
                        ]
                ),
        ];
    }

    private static IEnumerable<LoggedPhase> Travel(PhaseSpan span, LogEvaluation evaluation)
    {
        var (from, end) = (span.First.TimeSeconds, span.Next.TimeSeconds);
        var steady = evaluation.Steady.FirstOrDefault(s =>
            s.FromSeconds >= from && s.ToSeconds <= end
        );
        var (up, down) = steady is null ? (from, end) : (steady.FromSeconds, steady.ToSeconds);
        var overlap = Math.Clamp(evaluation.OverlapSeconds ?? end, up, end);
        LoggedPhase[] phases =
        [
            new(LoggedPhase.Ramp, from, up),
            new(LoggedPhase.Traverse, up, Math.Min(down, overlap)),
            new(LoggedPhase.Ramp, Math.Min(down, overlap), overlap),
            new(LoggedPhase.Overlap, overlap, end),
        ];
        return phases.Where(p => p.EndSeconds > p.StartSeconds);
    }
}
