using System.Numerics;
using System.Runtime.InteropServices;

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

    /// <summary>The statistics of a batch of samples.</summary>
    /// <param name="samples">Finite samples; may be empty.</param>
    public static RunningStatistics Of(ReadOnlySpan<double> samples)
    {
        if (samples.IsEmpty)
        {
            return default;
        }

        var (sum, minimum, maximum) = Extent(samples);
        var mean = sum / samples.Length;
        var (squares, rest) = Deviations(samples, mean);
        return new RunningStatistics
        {
            Count = samples.Length,
            MeanInSampleUnit = mean + (rest / samples.Length),
            _squares = squares - (rest * rest / samples.Length),
            MinimumInSampleUnit = minimum,
            MaximumInSampleUnit = maximum,
        };
    }

    /// <summary>The statistics of samples that were counted in classes of equal width; the outer classes are not empty.</summary>
    internal static RunningStatistics FromCounts(
        ReadOnlySpan<uint> counts,
        long count,
        double sumOfClasses,
        double lowest,
        double width
    )
    {
        var (mean, squares) = (sumOfClasses / count, 0.0);
        for (var i = 0; i < counts.Length; i++)
        {
            squares += counts[i] * (i - mean) * (i - mean);
        }

        return new RunningStatistics
        {
            Count = count,
            MeanInSampleUnit = lowest + (mean * width),
            _squares = squares * width * width,
            MinimumInSampleUnit = lowest,
            MaximumInSampleUnit = lowest + ((counts.Length - 1) * width),
        };
    }

    /// <summary>Takes a batch of samples.</summary>
    /// <param name="samples">Finite samples; may be empty.</param>
    public void Add(ReadOnlySpan<double> samples) => Add(Of(samples));

    /// <summary>Takes samples whose statistics are known.</summary>
    /// <param name="batch">Their statistics.</param>
    public void Add(in RunningStatistics batch)
    {
        if (batch.Count == 0)
        {
            return;
        }

        MinimumInSampleUnit =
            Count == 0
                ? batch.MinimumInSampleUnit
                : Math.Min(MinimumInSampleUnit, batch.MinimumInSampleUnit);
        MaximumInSampleUnit =
            Count == 0
                ? batch.MaximumInSampleUnit
                : Math.Max(MaximumInSampleUnit, batch.MaximumInSampleUnit);
        var total = Count + batch.Count;
        var step = batch.MeanInSampleUnit - MeanInSampleUnit;
        _squares += batch._squares + (step * step * Count * batch.Count / total);
        MeanInSampleUnit += step * batch.Count / total;
        Count = total;
    }

    /// <summary>Sum and extremes, as many samples at once as the processor takes.</summary>
    private static (double Sum, double Minimum, double Maximum) Extent(ReadOnlySpan<double> samples)
    {
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(samples);
        var (sums, lows, highs) = (
            Vector<double>.Zero,
            new Vector<double>(samples[0]),
            new Vector<double>(samples[0])
        );
        foreach (var vector in vectors)
        {
            sums += vector;
            lows = Vector.MinNative(lows, vector);
            highs = Vector.MaxNative(highs, vector);
        }

        var (sum, minimum, maximum) = (Vector.Sum(sums), samples[0], samples[0]);
        for (var lane = 0; lane < Vector<double>.Count; lane++)
        {
            minimum = Math.Min(minimum, lows[lane]);
            maximum = Math.Max(maximum, highs[lane]);
        }

        foreach (var sample in samples[(vectors.Length * Vector<double>.Count)..])
        {
            sum += sample;
            minimum = Math.Min(minimum, sample);
            maximum = Math.Max(maximum, sample);
        }

        return (sum, minimum, maximum);
    }

    /// <summary>Sum of the squares of the deviations from a mean, and of the deviations themselves.</summary>
    private static (double Squares, double Sum) Deviations(
        ReadOnlySpan<double> samples,
        double mean
    )
    {
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(samples);
        var (means, squares, rests) = (
            new Vector<double>(mean),
            Vector<double>.Zero,
            Vector<double>.Zero
        );
        foreach (var vector in vectors)
        {
            var deviations = vector - means;
            squares += deviations * deviations;
            rests += deviations;
        }

        var (square, rest) = (Vector.Sum(squares), Vector.Sum(rests));
        foreach (var sample in samples[(vectors.Length * Vector<double>.Count)..])
        {
            var deviation = sample - mean;
            square += deviation * deviation;
            rest += deviation;
        }

        return (square, rest);
    }
}
