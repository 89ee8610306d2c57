using System.Numerics;

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

    /// <summary>Takes a batch of samples and gives the integral up to each of them.</summary>
    /// <param name="timesSeconds">Time stamps in s, none before the one before.</param>
    /// <param name="rates">Values at those times; as many.</param>
    /// <param name="totals">Room for as many.</param>
    public void Add(
        ReadOnlySpan<double> timesSeconds,
        ReadOnlySpan<double> rates,
        Span<double> totals
    )
    {
        if (timesSeconds.IsEmpty)
        {
            return;
        }

        var total = Add(timesSeconds[0], rates[0]);
        totals = totals[..timesSeconds.Length];
        totals[0] = total;
        Steps(timesSeconds, rates, totals[1..]);
        foreach (ref var sum in totals[1..])
        {
            total += sum;
            sum = total;
        }

        (Total, _timeSeconds, _rate) = (total, timesSeconds[^1], rates[timesSeconds.Length - 1]);
    }

    /// <summary>The part of the integral between each sample and the next one.</summary>
    private static void Steps(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> rates,
        Span<double> steps
    )
    {
        var i = 0;
        for (; i <= steps.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            var step = new Vector<double>(times[(i + 1)..]) - new Vector<double>(times[i..]);
            var sum = new Vector<double>(rates[i..]) + new Vector<double>(rates[(i + 1)..]);
            (step * sum * new Vector<double>(0.5)).CopyTo(steps[i..]);
        }

        for (; i < steps.Length; i++)
        {
            steps[i] = (times[i + 1] - times[i]) * (rates[i] + rates[i + 1]) / 2;
        }
    }

    /// <summary>Leaves out the time until the next sample, for instance between two stays in the work.</summary>
    public void Interrupt() => _started = false;
}
