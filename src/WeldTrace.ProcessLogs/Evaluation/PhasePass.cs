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
        var samples = new PhaseSamples(channels, axis);
        while (frames.MoveNext())
        {
            segmentation.Add(samples.Of(frames));
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
}
