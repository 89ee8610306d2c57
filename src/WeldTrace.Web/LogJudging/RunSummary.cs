using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.LogJudging;

/// <summary>What a judged log means for the record of its run.</summary>
public static class RunSummary
{
    /// <param name="fileName">Name of the file as it was brought.</param>
    /// <param name="log">The log.</param>
    /// <param name="evaluation">Its evaluation by the plan of the run.</param>
    /// <param name="run">The run.</param>
    /// <param name="procedure">Procedure whose windows were asked for.</param>
    public static LogSummary Of(
        string fileName,
        ProcessLog log,
        LogEvaluation evaluation,
        WeldRun run,
        ProcedureContent procedure
    )
    {
        ArgumentNullException.ThrowIfNull(run);
        return Of(fileName, log, evaluation, run.TrackRadius, procedure, run.From);
    }

    /// <summary>The same for any seam; on a straight one, without a radius, excursions have no angle. A repair begins at an angle of its pass.</summary>
    public static LogSummary Of(
        string fileName,
        ProcessLog log,
        LogEvaluation evaluation,
        Length? trackRadius,
        ProcedureContent procedure,
        Angle from = default
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(evaluation);
        ArgumentNullException.ThrowIfNull(procedure);
        var header = log.Header;
        return new LogSummary(
            fileName,
            header.OriginalSha256,
            header.OriginalLengthBytes,
            header.CsvSha256,
            header.SampleCount,
            header.DurationSeconds,
            evaluation.Travelled,
            evaluation.Completion == RunCompletion.Complete,
            ShownPhases.Of(evaluation),
            [.. Parameters(evaluation, procedure)],
            [
                .. DwellOfRun.Excursions(
                    evaluation,
                    procedure,
                    place => from + AngleAt(place, trackRadius)
                ),
                .. evaluation.Excursions.Select(e => Excursion(e, trackRadius, from)),
            ],
            [.. NotJudged(evaluation, procedure)],
            [.. evaluation.Observations.Select(Note)],
            [.. evaluation.SeamPoints.Select(p => new LoggedPlace(p.Seconds, p.Position.Metres))],
            evaluation.SpindleLineEnergy?.JoulesPerMetre,
            PitchOf(evaluation),
            evaluation.Closure is { } closure
                ? new LoggedClosure(SourceWord(closure.Source), closure.BySpeed, closure.ByOther)
                : null,
            [.. evaluation.Signatures.Select(Signature)],
            PhaseSummary.Of(evaluation, procedure)
        )
        {
            Filters =
                evaluation.Filters.Count == 0
                    ? null
                    :
                    [
                        .. evaluation.Filters.Select(f => new JudgedAfter(
                            f.Key.ToString(),
                            LogChannels.NameOf(f.Key),
                            f.Value
                        )),
                    ],
        };
    }

    private static string SourceWord(SeamPositionSource source) =>
        source == SeamPositionSource.AxisAngle ? "angle of the axis" : "machine coordinates";

    private static LoggedSignature Signature(ChannelSignature found) =>
        new(
            LogChannels.NameOf(found.Channel),
            found.Line?.Hertz,
            found.Line?.Amplitude,
            found.Line?.LowBandRms,
            found.Line?.LowBandRatio,
            found.Samples,
            found.Sentence
        );

    private static IEnumerable<LoggedParameter> Parameters(
        LogEvaluation evaluation,
        ProcedureContent procedure
    ) =>
        procedure.Windows.SelectMany(window =>
            window.Parameter == WeldParameter.DwellTime
                ? DwellOfRun.Figures(evaluation)
                : evaluation
                    .Statistics.Where(found =>
                        found.IsSteady && found.Channel == WatchedChannels.Of(window.Parameter)
                    )
                    .Select(found => PhaseSummary.Parameter(window.Parameter, found))
        );

    private static LoggedNote Note(LogObservation seen) =>
        new(seen.Sentence, seen.FirstRow, seen.LastRow, seen.StartSeconds, seen.EndSeconds);

    private static double? PitchOf(LogEvaluation evaluation)
    {
        var travel = SteadyMean(evaluation, LogChannel.TravelSpeed);
        var turns = SteadyMean(evaluation, LogChannel.SpindleSpeed);
        return turns > 0 ? travel / turns : null;
    }

    private static double? SteadyMean(LogEvaluation evaluation, LogChannel channel) =>
        evaluation
            .Statistics.FirstOrDefault(found => found.IsSteady && found.Channel == channel)
            ?.MeanSi;

    private static LoggedExcursion Excursion(ChannelExcursion found, Length? radius, Angle from) =>
        new(
            WatchedChannels.ParameterOf(found.Channel)
                ?? throw new ArgumentException($"{found.Channel} has no window."),
            found.Side == ExcursionSide.High,
            found.StartSeconds,
            found.EndSeconds,
            from + AngleAt(found.Start, radius),
            from + AngleAt(found.End, radius),
            found.LengthAlongSeam,
            found.ExtremeSi,
            found.Phase == WeldPhase.Traverse ? null : found.Phase.ToString().ToLowerInvariant(),
            found.IsWarning
        );

    private static Angle AngleAt(Length position, Length? radius) =>
        radius is { } r ? Angle.FromRadians(position / r) : Angle.Zero;

    private static IEnumerable<WeldParameter> NotJudged(
        LogEvaluation evaluation,
        ProcedureContent procedure
    ) =>
        procedure
            .Windows.Where(w =>
                w.Parameter == WeldParameter.DwellTime
                    ? evaluation.Dwells.Count == 0
                    : WatchedChannels.Of(w.Parameter) is not { } channel
                        || evaluation.NotLogged.Contains(channel)
            )
            .Select(w => w.Parameter);
}
