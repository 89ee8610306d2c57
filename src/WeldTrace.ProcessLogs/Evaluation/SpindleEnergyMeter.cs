using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Mechanical energy of the spindle: integral of 2 pi n M over time.</summary>
internal sealed class SpindleEnergyMeter(LogHeader header)
{
    private readonly LogColumn? _speed = RunChannels.Find(header, LogChannel.SpindleSpeed);
    private readonly LogColumn? _torque = RunChannels.Find(header, LogChannel.Torque);
    private TrapezoidIntegral _joules;

    public Energy? Total =>
        _speed is null || _torque is null ? null : Energy.FromJoules(_joules.Total);

    /// <summary>Takes the samples of a half-open range; a range that ends before the frame ends the stretch.</summary>
    public void Add(LogFrames frames, ReadOnlySpan<double> seconds, int from, int to)
    {
        if (_speed is null || _torque is null)
        {
            return;
        }

        for (var i = from; i < to; i++)
        {
            var watts = 2 * Math.PI * frames.Si(_speed, i) * frames.Si(_torque, i);
            _joules.Add(seconds[i], Math.Abs(watts));
        }

        if (to < seconds.Length)
        {
            _joules.Interrupt();
        }
    }
}
