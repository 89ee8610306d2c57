using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.LogJudging;

/// <summary>How far the logged plunge depth of a run stays from the penetration ligament of its pass.</summary>
public static class LigamentOfRun
{
    /// <summary>The margin; null without a logged plunge depth or a thickness.</summary>
    public static Computed<LigamentMargin>? Margin(LogSummary log, ProcedureContent procedure)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(procedure);
        return
            (log.PhaseFigures ?? []).Max(phase => phase.DeepestMetres) is not { } deepest
            || procedure.StackThickness <= Length.Zero
            ? null
            : LigamentMargin.Compute(
                procedure.StackThickness,
                Length.FromMetres(Math.Max(0, deepest)),
                procedure.WindowOf(WeldParameter.PenetrationLigament) is { } window
                    ? Length.FromSi(window.LowerSi)
                    : null
            );
    }
}
