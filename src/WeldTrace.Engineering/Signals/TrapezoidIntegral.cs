namespace WeldTrace.Engineering.Signals;

/// <summary>Integral over time by the trapezoid rule, sample by sample. The unit is that of the values times s.</summary>
public struct TrapezoidIntegral
{
    private double _timeSeconds;
    private double _rate;
    private bool _started;

    /// <summary>The integral so far; zero before the second sample.</summary>
    public double Total { get; private set; }

    /// <summary>Takes the next sample and gives the integral up to it.</summary>
    /// <param name="timeSeconds">Time stamp in s, not before the one before.</param>
    /// <param name="rate">Value at that time; finite.</param>
    public double Add(double timeSeconds, double rate)
    {
        if (_started)
        {
            Total += (timeSeconds - _timeSeconds) * (rate + _rate) / 2;
        }

        (_timeSeconds, _rate, _started) = (timeSeconds, rate, true);
        return Total;
    }

    /// <summary>Leaves out the time until the next sample, for instance between two stays in the work.</summary>
    public void Interrupt() => _started = false;
}
