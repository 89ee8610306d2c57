using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.LogJudging;

/// <summary>What a run was meant to be, as its procedure revision and its pass lay down.</summary>
public static class RunPlan
{
    private const double ShortestDwellSeconds = 0.2;

    public static EvaluationPlan For(WeldRun run, PassPlan pass, ProcedureContent procedure)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(pass);
        ArgumentNullException.ThrowIfNull(procedure);
        return new EvaluationPlan
        {
            Windows = [.. procedure.Windows.Select(Window).OfType<ChannelWindow>()],
            PlannedPath = run.PlannedPath,
            Track = new CircularTrack(run.TrackRadius, pass.Start, run.Travel),
            PlannedOverlap = run.TrackRadius * pass.Overlap.Radians,
            ProgrammedSpeed = procedure.WindowOf(WeldParameter.TravelSpeed) is { } travel
                ? Speed.FromSi(travel.SetPointSi)
                : null,
            Debounce = TimeSpan.FromSeconds((double)procedure.DebounceSeconds),
            Thresholds = Thresholds(procedure),
        };
    }

    private static ChannelWindow? Window(ParameterWindow window) =>
        WatchedChannels.Of(window.Parameter) is { } channel
            ? new ChannelWindow(
                channel,
                window.LowerSi,
                window.UpperSi,
                LogUnits.SiUnitOf(LogChannels.QuantityOf(channel))
            )
            : null;

    private static PhaseThresholds Thresholds(ProcedureContent procedure) =>
        procedure.WindowOf(WeldParameter.DwellTime)?.SetPointSi is { } dwell
        && dwell > ShortestDwellSeconds
            ? new PhaseThresholds { ProgrammedDwell = TimeSpan.FromSeconds(dwell) }
            : new PhaseThresholds();
}
