using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The first pass over a log: finds the phases.</summary>
internal static class PhasePass
{
    public static RunPhases Run(ProcessLog log, EvaluationPlan plan, RunChannels channels)
    {
        var segmentation = new PhaseSegmentation(Thresholds(plan));
        var axis =
            channels.Source == SeamPositionSource.AxisAngle
                ? new AxisTravelSpeed(plan.Track!.Radius)
                : null;
        using var frames = new LogFrames(log, channels.Columns);
        while (frames.MoveNext())
        {
            Add(frames, channels, segmentation, axis);
        }

        return segmentation.Complete();
    }

    private static PhaseThresholds Thresholds(EvaluationPlan plan) =>
        plan.Thresholds with
        {
            SteadySpeed =
                plan.Thresholds.SteadySpeed
                ?? (plan.ProgrammedSpeed is { } speed ? speed * plan.SteadySpeedShare : null),
        };

    private static void Add(
        LogFrames frames,
        RunChannels channels,
        PhaseSegmentation segmentation,
        AxisTravelSpeed? axis
    )
    {
        for (var i = 0; i < frames.Count; i++)
        {
            var seconds = frames.Si(channels.Time, i);
            var travel = Sample(frames, channels.Travel, i);
            segmentation.Add(
                new ToolSample(
                    seconds,
                    Sample(frames, channels.Force, i),
                    Sample(frames, channels.Depth, i),
                    axis?.Add(seconds, travel) ?? Math.Abs(travel)
                )
            );
        }
    }

    private static double Sample(LogFrames frames, LogColumn? column, int index) =>
        column is null ? double.NaN : frames.Si(column, index);
}
