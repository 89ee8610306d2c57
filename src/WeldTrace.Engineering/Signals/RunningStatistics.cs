namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Count, mean, standard deviation and extremes, sample by sample, by the pairwise update of Chan, Golub and
/// LeVeque (1979). All results are in the unit of the samples.
/// </summary>
public struct RunningStatistics
{
    private double _squares;

    /// <summary>Samples taken.</summary>
    public long Count { get; private set; }

    /// <summary>Arithmetic mean; zero when there are no samples.</summary>
    public double MeanInSampleUnit { get; private set; }

    /// <summary>Smallest sample; zero when there are no samples.</summary>
    public double MinimumInSampleUnit { get; private set; }

    /// <summary>Largest sample; zero when there are no samples.</summary>
    public double MaximumInSampleUnit { get; private set; }

    /// <summary>Sample standard deviation (divisor n - 1); zero for fewer than two samples.</summary>
    public readonly double StandardDeviationInSampleUnit =>
        Count < 2 ? 0 : Math.Sqrt(_squares / (Count - 1));

    /// <summary>Takes a batch of samples.</summary>
    /// <param name="samples">Finite samples; may be empty.</param>
    public void Add(ReadOnlySpan<double> samples)
    {
        if (samples.IsEmpty)
        {
            return;
        }

        var (sum, minimum, maximum) = (0.0, samples[0], samples[0]);
        foreach (var sample in samples)
        {
            sum += sample;
            minimum = Math.Min(minimum, sample);
            maximum = Math.Max(maximum, sample);
        }

        Merge(samples, sum / samples.Length);
        MinimumInSampleUnit =
            Count == samples.Length ? minimum : Math.Min(MinimumInSampleUnit, minimum);
        MaximumInSampleUnit =
            Count == samples.Length ? maximum : Math.Max(MaximumInSampleUnit, maximum);
    }

    private void Merge(ReadOnlySpan<double> samples, double mean)
    {
        var (squares, rest) = (0.0, 0.0);
        foreach (var sample in samples)
        {
            var deviation = sample - mean;
            squares += deviation * deviation;
            rest += deviation;
        }

        squares -= rest * rest / samples.Length;
        mean += rest / samples.Length;
        var total = Count + samples.Length;
        var step = mean - MeanInSampleUnit;
        _squares += squares + (step * step * Count * samples.Length / total);
        MeanInSampleUnit += step * samples.Length / total;
        Count = total;
    }
}
