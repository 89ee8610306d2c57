using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Puts the judgement of a run together.</summary>
internal static class RunJudgement
{
    public static LogEvaluation Of(ProcessLog log, EvaluationPlan plan)
    {
        using var some = new UnpackedWhenAsked(log);
        using var all = new UnpackedAhead(log);
        return Of(log, plan, some, all);
    }

    /// <summary>The same of samples that are unpacked otherwise.</summary>
    public static LogEvaluation Of(
        ProcessLog log,
        EvaluationPlan plan,
        ISampleSource some,
        ISampleSource all
    )
    {
        var channels = RunChannels.Of(log.Header, plan);
        var phases = plan.Bounds is { } bounds
            ? StatedPhases.Of(log, channels.Time, bounds)
            : PhasePass.Run(log, plan, channels, some);
        var pass = new JudgePass(log, plan, channels, phases);
        pass.Run(all);
        SteadyStretch[] steady = [.. pass.Steady];
        PhaseStatistics[] statistics = [.. pass.Statistics];
        var turns = statistics.FirstOrDefault(found =>
            found.IsSteady && found.Channel == LogChannel.SpindleSpeed
        );
        var isJudged = phases.HasTraverse && channels.Source is not null;
        return new LogEvaluation
        {
            Phases = phases.Spans,
            Dwells = [.. DwellsOf(log.Header, plan, phases)],
            Steady = steady,
            Travelled = pass.Travelled,
            PositionSource = channels.Source,
            Completion = isJudged
                ? CompletionOf(phases, plan, pass.Travelled)
                : RunCompletion.NoTraverse,
            OverlapCompleted = OverlapOf(plan, pass.Travelled),
            Statistics = statistics,
            PhaseFigures = [.. pass.PhaseFigures],
            Excursions = [.. pass.Excursions(plan.Track)],
            NotLogged =
            [
                .. plan
                    .Windows.Select(window => window.Channel)
                    .Where(channel => RunChannels.Find(log.Header, channel) is null)
                    .Distinct(),
            ],
            Filters = plan
                .Filters.Where(filter =>
                    plan.Windows.Any(window => window.Channel == filter.Key)
                    && RunChannels.Find(log.Header, filter.Key) is not null
                )
                .ToDictionary(),
            SpindleEnergy = phases.HasTraverse ? pass.SpindleEnergy : null,
            SpindleLineEnergy = PerLength(pass.SpindleEnergy, steady),
            Closure = pass.Closure,
            OverlapSeconds = pass.OverlapSeconds,
            Signatures = [.. pass.Signatures(turns?.MeanSi)],
            Observations = pass.Observations,
            SeamPoints = pass.Points,
            Problems = isJudged ? [] : [NoTraverse(channels, plan)],
        };
    }

    private static RunCompletion CompletionOf(
        RunPhases phases,
        EvaluationPlan plan,
        Length travelled
    ) =>
        phases.Passes.Count > 1 ? RunCompletion.Interrupted
        : plan.PlannedPath is not { } planned ? RunCompletion.NotJudged
        : travelled >= planned - plan.PathTolerance ? RunCompletion.Complete
        : RunCompletion.Interrupted;

    private static IEnumerable<DwellBeforeTravel> DwellsOf(
        LogHeader header,
        EvaluationPlan plan,
        RunPhases phases
    ) =>
        plan.Bounds is not null
        || (
            RunChannels.Find(header, LogChannel.PlungeDepth) is not null
            && RunChannels.Find(header, LogChannel.TravelSpeed) is not null
        )
            ? from stay in phases.Passes
            where stay is { DwellStart: not null, TraverseStart: not null }
            select new DwellBeforeTravel(
                stay.DwellStart!.Value.TimeSeconds,
                stay.TraverseStart!.Value.TimeSeconds
            )
            : [];

    private static bool? OverlapOf(EvaluationPlan plan, Length travelled) =>
        plan is { Track: { } track, PlannedOverlap: { } overlap }
            ? travelled >= track.Circumference + overlap - plan.PathTolerance
            : null;

    private static LineEnergy? PerLength(Energy? energy, SteadyStretch[] steady)
    {
        var metres = steady.Sum(stretch => (stretch.To - stretch.From).Metres);
        return energy is { } total && metres > 0
            ? LineEnergy.FromJoulesPerMetre(total.Joules / metres)
            : null;
    }

    private static LogProblem NoTraverse(RunChannels channels, EvaluationPlan plan)
    {
        var thresholds = plan.Thresholds;
        return channels.Source is null
            ? new(
                LogProblemCode.NoTraverse,
                "The path travelled cannot be measured: the log has no travel speed, and neither an axis angle with a known radius nor a programmed speed stands in for it.",
                "Map the column that holds the travel speed or the axis angle."
            )
            : new(
                LogProblemCode.NoTraverse,
                string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"No traverse was found: the tool never travelled at {thresholds.TraverseSpeed.MillimetresPerMinute:0.###} mm/min or more for {thresholds.TravelHold.TotalSeconds:0.###} s while it pressed with {thresholds.ContactForce.Kilonewtons:0.###} kN or more."
                ),
                "Check the units and signs of force, depth and travel speed in the mapping, and that the log is of this run."
            );
    }
}
