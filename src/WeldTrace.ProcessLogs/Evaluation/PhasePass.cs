using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>
/// The first pass over a log: finds the phases. Frames in which the tool is under way throughout are passed over by
/// their least speed alone, without unpacking them.
/// </summary>
internal sealed class PhasePass
{
    private readonly RunChannels _channels;
    private readonly PhaseSegmentation _phases;
    private readonly PhaseSamples _samples;
    private readonly LogFrames _frames;
    private double[] _depths = [];

    private PhasePass(
        ProcessLog log,
        EvaluationPlan plan,
        RunChannels channels,
        ISampleSource samples
    )
    {
        var axis = channels.Source switch
        {
            SeamPositionSource.AxisAngle => new AxisTravelSpeed(plan.Track!.Radius),
            // A path in m turns like an angle at a radius of 1 m.
            SeamPositionSource.Coordinates => new AxisTravelSpeed(Length.FromMetres(1)),
            _ => null,
        };
        _channels = channels;
        _phases = new PhaseSegmentation(Thresholds(plan));
        _samples = new PhaseSamples(channels, axis);
        _frames = new LogFrames(log, samples);
    }

    public static RunPhases Run(
        ProcessLog log,
        EvaluationPlan plan,
        RunChannels channels,
        ISampleSource samples
    ) => new PhasePass(log, plan, channels, samples).Run();

    private RunPhases Run()
    {
        while (_frames.MoveNext())
        {
            if (_phases.IsUnderWayAt(LeastSpeed()))
            {
                var time = _frames.Chunk(_channels.Time);
                _phases.PassOver(
                    _frames.Count,
                    _channels.Time.ToSi(time.MinimumAsLogged),
                    _channels.Time.ToSi(time.MaximumAsLogged),
                    LastDepth()
                );
            }
            else
            {
                _phases.Add(_samples.Of(_frames));
            }
        }

        return _phases.Complete();
    }

    private double LeastSpeed()
    {
        if (_channels is not { Source: SeamPositionSource.TravelSpeed, Travel: { } travel })
        {
            return double.NaN;
        }

        var chunk = _frames.Chunk(travel);
        var (one, other) = (travel.ToSi(chunk.MinimumAsLogged), travel.ToSi(chunk.MaximumAsLogged));
        return Math.Sign(one) == Math.Sign(other)
            ? Math.Min(Math.Abs(one), Math.Abs(other))
            : double.NaN;
    }

    private double LastDepth() =>
        _channels.Depth is { } depth ? _frames.Si(depth, ref _depths)[^1] : double.NaN;

    private static PhaseThresholds Thresholds(EvaluationPlan plan) =>
        plan.Thresholds with
        {
            SteadySpeed =
                plan.Thresholds.SteadySpeed
                ?? (plan.ProgrammedSpeed is { } speed ? speed * plan.SteadySpeedShare : null),
        };
}
