using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;
using WeldTrace.ProcessLogs;
using DesignPass = WeldTrace.Domain.VesselDesigns.PassPlan;

namespace WeldTrace.Web.LogJudging;

/// <summary>What a run was meant to be, as its procedure revision and its pass lay down.</summary>
public static class RunPlan
{
    private const double ShortestDwellSeconds = 0.2;

    public static EvaluationPlan For(WeldRun run, DesignPass pass, ProcedureContent procedure)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(pass);
        return Of(procedure) with
        {
            PlannedPath = run.PlannedPath,
            Track = new CircularTrack(run.TrackRadius, StartOf(run, pass), run.Travel),
            PlannedOverlap = run.Repair is null ? run.TrackRadius * pass.Overlap.Radians : null,
        };
    }

    // Angles of a track are counted counter-clockwise, those of a design clockwise and those of a run along its travel.
    private static Angle StartOf(WeldRun run, DesignPass pass) =>
        run.Travel == RotationSense.CounterClockwise
            ? run.From - pass.Start
            : Angle.Zero - pass.Start - run.From;

    /// <summary>The same for a test piece: a straight seam at the planned settings.</summary>
    public static EvaluationPlan For(
        QualificationRecord record,
        PlannedPiece planned,
        ProcedureContent procedure
    )
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(planned);
        return Of(planned.Of(procedure)) with { PlannedPath = record.Plan.PieceLength };
    }

    private static EvaluationPlan Of(ProcedureContent procedure)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        return new EvaluationPlan
        {
            Windows = [.. procedure.Windows.SelectMany(WindowsOf)],
            ProgrammedSpeed = procedure.WindowOf(WeldParameter.TravelSpeed) is { } travel
                ? Speed.FromSi(travel.SetPointSi)
                : null,
            Debounce = TimeSpan.FromSeconds((double)procedure.DebounceSeconds),
            DebounceLength = procedure.DebounceMillimetres is { } length
                ? Length.FromMillimetres((double)length)
                : null,
            Thresholds = Thresholds(procedure),
        };
    }

    /// <summary>Limits of the traverse, warnings within them, and limits of other phases.</summary>
    private static IEnumerable<ChannelWindow> WindowsOf(ParameterWindow window)
    {
        if (WatchedChannels.Of(window.Parameter) is not { } channel)
        {
            yield break;
        }

        var unit = LogUnits.SiUnitOf(LogChannels.QuantityOf(channel));
        double Si(decimal value) => ParameterUnits.ToSi(window.Parameter, value, window.Unit);
        yield return new ChannelWindow(channel, window.LowerSi, window.UpperSi, unit);
        if (window.WarningLower is not null || window.WarningUpper is not null)
        {
            yield return new ChannelWindow(
                channel,
                window.WarningLower is { } low ? Si(low) : null,
                window.WarningUpper is { } high ? Si(high) : null,
                unit
            )
            {
                IsWarning = true,
            };
        }

        foreach (var phase in window.OtherPhases ?? [])
        {
            yield return new ChannelWindow(channel, Si(phase.Lower), Si(phase.Upper), unit)
            {
                Phase = Enum.Parse<WeldPhase>(phase.Phase, ignoreCase: true),
            };
        }
    }

    private static PhaseThresholds Thresholds(ProcedureContent procedure) =>
        procedure.WindowOf(WeldParameter.DwellTime)?.SetPointSi is { } dwell
        && dwell > ShortestDwellSeconds
            ? new PhaseThresholds { ProgrammedDwell = TimeSpan.FromSeconds(dwell) }
            : new PhaseThresholds();
}
