using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.PressureTesting;

/// <summary>One sample of a pressure log.</summary>
/// <param name="Time">Time since the start of the log.</param>
/// <param name="Gauge">Gauge pressure.</param>
/// <param name="Medium">Temperature of vessel or medium; null when the log has none.</param>
/// <param name="Ambient">Temperature of the room; null when the log has none.</param>
public readonly record struct TraceSample(
    TimeSpan Time,
    Pressure Gauge,
    Temperature? Medium,
    Temperature? Ambient = null
);

/// <summary>Where a hold lies in a trace.</summary>
/// <param name="Begin">First sample of the hold.</param>
/// <param name="End">Last sample that counts for it.</param>
/// <param name="Held">Time between both.</param>
/// <param name="Highest">Highest pressure up to the end of the hold.</param>
/// <param name="FastestRise">Greatest rise within one minute up to there.</param>
public sealed record TraceHold(
    TraceSample Begin,
    TraceSample End,
    TimeSpan Held,
    Pressure Highest,
    Pressure FastestRise
);

/// <summary>The samples of a pressure log, in rising order of time; at least two.</summary>
public sealed class PressureTrace
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan Moment = TimeSpan.FromSeconds(10);

    /// <summary>Takes the samples of a log.</summary>
    /// <param name="samples">In rising order of time, at least two.</param>
    /// <exception cref="ArgumentException">Fewer than two, or not in order.</exception>
    public PressureTrace(IReadOnlyList<TraceSample> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        if (
            samples.Count < 2
            || samples.Zip(samples.Skip(1)).Any(p => p.Second.Time <= p.First.Time)
        )
        {
            throw new ArgumentException(
                "Two samples in order of time are needed.",
                nameof(samples)
            );
        }

        Samples = samples;
    }

    /// <summary>All samples.</summary>
    public IReadOnlyList<TraceSample> Samples { get; }

    /// <summary>The sample of the highest pressure; the first of several.</summary>
    public TraceSample Highest => Samples.MaxBy(s => s.Gauge.Pascals);

    /// <summary>
    /// Finds the hold of a stage. It begins with the first sample at or above <paramref name="least"/> after which the pressure rises
    /// no more than <paramref name="quiet"/> within ten seconds. It ends with the last sample before the pressure falls below
    /// <paramref name="lowest"/>; a pressure that falls below it before the required time is over does not shorten the hold: the sample
    /// at the required time then shows what was lost.
    /// </summary>
    /// <param name="least">Lowest gauge pressure at which the hold may begin.</param>
    /// <param name="lowest">Gauge pressure below which the hold is over.</param>
    /// <param name="quiet">Rise that no longer counts as filling.</param>
    /// <param name="required">Time that the pressure must be held.</param>
    /// <returns>The hold; null when the pressure was never reached, or there is no sample after its begin.</returns>
    public TraceHold? FindHold(Pressure least, Pressure lowest, Pressure quiet, TimeSpan required)
    {
        var begin = IndexOf(0, s => s.Gauge >= least);
        while (begin >= 0 && begin < Samples.Count - 1 && Rises(begin, quiet))
        {
            begin++;
        }

        if (begin < 0 || begin == Samples.Count - 1)
        {
            return null;
        }

        var end = Math.Max(EndOf(begin, lowest, Samples[begin].Time + required), begin + 1);
        return new TraceHold(
            Samples[begin],
            Samples[end],
            Samples[end].Time - Samples[begin].Time,
            Samples.Take(end + 1).Max(s => s.Gauge),
            FastestRise(end)
        );
    }

    /// <summary>Greatest rise of pressure within one minute, up to a sample.</summary>
    /// <param name="last">Index of the last sample looked at.</param>
    public Pressure FastestRise(int last)
    {
        var (greatest, from) = (0.0, 0);
        LinkedList<int> lows = [];
        for (var i = 0; i <= last; i++)
        {
            while (Samples[i].Time - Samples[from].Time > Minute)
            {
                if (lows.First?.Value == from)
                {
                    lows.RemoveFirst();
                }

                from++;
            }

            while (lows.Last is { } tail && Samples[tail.Value].Gauge >= Samples[i].Gauge)
            {
                lows.RemoveLast();
            }

            lows.AddLast(i);
            greatest = Math.Max(
                greatest,
                (Samples[i].Gauge - Samples[lows.First!.Value].Gauge).Pascals
            );
        }

        return Pressure.FromPascals(greatest);
    }

    /// <summary>At most about so many samples that keep the smallest and the largest pressure of each stretch, for drawing.</summary>
    /// <param name="most">Largest count, 4 or more.</param>
    public IReadOnlyList<TraceSample> Reduce(int most)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 4);
        if (Samples.Count <= most)
        {
            return Samples;
        }

        var stretches = most / 2;
        List<TraceSample> kept = new(most + 2) { Samples[0] };
        for (var b = 0; b < stretches; b++)
        {
            var from = (int)((long)b * Samples.Count / stretches);
            var to = (int)((long)(b + 1) * Samples.Count / stretches);
            var (low, high) = (from, from);
            for (var i = from; i < to; i++)
            {
                low = Samples[i].Gauge < Samples[low].Gauge ? i : low;
                high = Samples[i].Gauge > Samples[high].Gauge ? i : high;
            }

            kept.Add(Samples[Math.Min(low, high)]);
            kept.Add(Samples[Math.Max(low, high)]);
        }

        kept.Add(Samples[^1]);
        return [.. kept.DistinctBy(s => s.Time)];
    }

    private bool Rises(int index, Pressure quiet)
    {
        for (
            var i = index + 1;
            i < Samples.Count && Samples[i].Time - Samples[index].Time <= Moment;
            i++
        )
        {
            if (Samples[i].Gauge - Samples[index].Gauge > quiet)
            {
                return true;
            }
        }

        return false;
    }

    private int EndOf(int begin, Pressure lowest, TimeSpan due)
    {
        var below = IndexOf(begin, s => s.Gauge < lowest);
        var stayed = below < 0 ? Samples.Count - 1 : below - 1;
        if (Samples[stayed].Time >= due)
        {
            return stayed;
        }

        var atDue = IndexOf(begin, s => s.Time >= due);
        return atDue < 0 ? Samples.Count - 1 : atDue;
    }

    private int IndexOf(int from, Func<TraceSample, bool> fits)
    {
        for (var i = from; i < Samples.Count; i++)
        {
            if (fits(Samples[i]))
            {
                return i;
            }
        }

        return -1;
    }
}
