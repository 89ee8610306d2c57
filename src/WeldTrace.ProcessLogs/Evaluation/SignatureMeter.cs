using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Looks for low-frequency content of one channel in a stretch of bounded length amid the steady traverse.</summary>
internal sealed class SignatureMeter
{
    private const int MostSamples = 8192;
    private const int FewestSamples = 256;

    private readonly LogColumn _column;
    private readonly double _period;
    private readonly double _fromSeconds;
    private readonly double[] _samples;
    private double[] _si = [];
    private int _count;

    public SignatureMeter(LogColumn column, LogHeader header, double fromSeconds, double toSeconds)
    {
        (_column, _period) = (column, header.SamplePeriodSeconds);
        var steady = Math.Max(0, (toSeconds - fromSeconds) / _period);
        _samples = new double[(int)Math.Min(MostSamples, steady)];
        _fromSeconds = ((fromSeconds + toSeconds) / 2) - (_samples.Length * _period / 2);
    }

    public void Add(LogFrames frames, ReadOnlySpan<double> seconds)
    {
        if (_count == _samples.Length || seconds[^1] < _fromSeconds)
        {
            return;
        }

        var from = seconds.BinarySearch(_count == 0 ? _fromSeconds : seconds[0]);
        ReadOnlySpan<double> wanted = frames.Si(_column, ref _si)[(from < 0 ? ~from : from)..];
        wanted = wanted[..Math.Min(wanted.Length, _samples.Length - _count)];
        wanted.CopyTo(_samples.AsSpan(_count));
        _count += wanted.Length;
    }

    public ChannelSignature? Complete(double? turnsPerSecond)
    {
        if (_count < FewestSamples || turnsPerSecond is not > 0)
        {
            return null;
        }

        var samples = _samples.AsSpan(0, _count);
        var mean = RunningStatistics.Of(samples).MeanInSampleUnit;
        foreach (ref var sample in samples)
        {
            sample -= mean;
        }

        var line = SpindleLine.Compute(
            samples,
            1 / _period,
            RotationSpeed.FromRevolutionsPerMinute(turnsPerSecond.Value * 60)
        );
        return line.TryGet(out var found)
            ? new(_column.Channel, found, "", _count)
            : new(
                _column.Channel,
                null,
                string.Join(" ", line.Refusals.Select(r => r.What)),
                _count
            );
    }
}
