using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Position along the seam of every sample: counted while the tool is in the work.</summary>
internal sealed class SeamTrace(RunChannels channels, RunPhases phases, SeamPosition? position)
{
    private double[] _metres = [];
    private int _span;

    public Length Travelled => position?.Travelled ?? Length.Zero;

    public ReadOnlySpan<double> Follow(LogFrames frames, ReadOnlySpan<double> seconds)
    {
        _metres = _metres.Length < frames.Count ? new double[frames.Count] : _metres;
        for (var i = 0; i < frames.Count; i++)
        {
            var sample = channels.Travel is null ? 0 : frames.Si(channels.Travel, i);
            _metres[i] = At(frames.First + i, seconds[i], sample);
        }

        return _metres.AsSpan(0, frames.Count);
    }

    private double At(long index, double seconds, double sample)
    {
        while (phases.Spans[_span].Next.Index <= index)
        {
            _span++;
        }

        if (position is null)
        {
            return 0;
        }

        if (!Counts(phases.Spans[_span].Phase))
        {
            position.Interrupt();
            return position.Travelled.Metres;
        }

        return position.Add(
            seconds,
            channels.Source == SeamPositionSource.TravelSpeed ? Math.Abs(sample) : sample
        );
    }

    private bool Counts(WeldPhase phase) =>
        channels.Source == SeamPositionSource.ProgrammedSpeed
            ? phase == WeldPhase.Traverse
            : phase != WeldPhase.Idle;
}
