using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Percentiles by counting samples in classes of equal width, in memory that does not grow with the samples.
/// No class counts beyond 2^32 - 1. When the width is the resolution of the samples the percentiles are exact; else they are within half a width.
/// </summary>
public sealed class CountingHistogram
{
    private const int Batch = 256;
    private readonly uint[] _counts;
    private readonly double _lowest;
    private readonly double _width;

    /// <summary>Makes an empty histogram.</summary>
    /// <param name="lowestInSampleUnit">Middle of the lowest class.</param>
    /// <param name="widthInSampleUnit">Width of a class; more than zero.</param>
    /// <param name="classes">Number of classes; one or more. Samples beyond are counted in the outer classes.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width or the number of classes is not more than zero.</exception>
    public CountingHistogram(double lowestInSampleUnit, double widthInSampleUnit, int classes)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(widthInSampleUnit);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(classes);
        (_lowest, _width) = (lowestInSampleUnit, widthInSampleUnit);
        _counts = new uint[classes];
    }

    /// <summary>Samples counted.</summary>
    public long Count { get; private set; }

    /// <summary>Counts a batch of samples.</summary>
    /// <param name="samples">Finite samples; may be empty.</param>
    public void Add(ReadOnlySpan<double> samples)
    {
        Span<long> classes = stackalloc long[Batch];
        Count += samples.Length;
        for (; !samples.IsEmpty; samples = samples[Math.Min(Batch, samples.Length)..])
        {
            var batch = samples[..Math.Min(Batch, samples.Length)];
            Classes(batch, classes);
            CountClasses(classes[..batch.Length]);
        }
    }

    /// <summary>The class of each sample, as many at once as the processor takes.</summary>
    private void Classes(ReadOnlySpan<double> samples, Span<long> classes)
    {
        var (perWidth, top) = (1 / _width, (double)(_counts.Length - 1));
        var vectors = MemoryMarshal.Cast<double, Vector<double>>(samples);
        var found = MemoryMarshal.Cast<long, Vector<long>>(classes);
        var (lowest, half) = (new Vector<double>(_lowest), new Vector<double>(0.5));
        for (var i = 0; i < vectors.Length; i++)
        {
            var place = ((vectors[i] - lowest) * perWidth) + half;
            place = Vector.MinNative(
                Vector.MaxNative(place, Vector<double>.Zero),
                new Vector<double>(top)
            );
            found[i] = Vector.ConvertToInt64Native(place);
        }

        for (var i = vectors.Length * Vector<double>.Count; i < samples.Length; i++)
        {
            classes[i] = (long)Math.Clamp(((samples[i] - _lowest) * perWidth) + 0.5, 0, top);
        }
    }

    /// <summary>The sample quantile of type 7 (Hyndman and Fan 1996; the default of R and numpy), in the unit of the samples.</summary>
    /// <param name="probability">0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability is outside 0 to 1.</exception>
    /// <exception cref="InvalidOperationException">There are no samples.</exception>
    public double QuantileInSampleUnit(double probability)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(probability);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(probability, 1);
        if (Count == 0)
        {
            throw new InvalidOperationException("There are no samples.");
        }

        var rank = probability * (Count - 1);
        var below = (long)Math.Floor(rank);
        var low = Ranked(below);
        return low + ((rank - below) * (Ranked(Math.Min(below + 1, Count - 1)) - low));
    }

    /// <summary>Count, mean, deviation and extremes of the samples, each taken as the middle of its class.</summary>
    public RunningStatistics Statistics()
    {
        var (sum, first, last) = (0.0, -1, -1);
        for (var i = 0; i < _counts.Length; i++)
        {
            if (_counts[i] > 0)
            {
                sum += (double)i * _counts[i];
                (first, last) = (first < 0 ? i : first, i);
            }
        }

        return first < 0
            ? default
            : RunningStatistics.FromCounts(
                _counts.AsSpan(first..(last + 1)),
                Count,
                sum - ((double)first * Count),
                _lowest + (first * _width),
                _width
            );
    }

    private void CountClasses(ReadOnlySpan<long> classes)
    {
        ref var counts = ref MemoryMarshal.GetArrayDataReference(_counts);
        var vectors = MemoryMarshal.Cast<long, Vector<long>>(classes);
        foreach (var vector in vectors)
        {
            // A channel that stands still would else wait for its own last count each time.
            if (vector == new Vector<long>(vector[0]))
            {
                Unsafe.Add(ref counts, (nint)vector[0]) += (uint)Vector<long>.Count;
                continue;
            }

            for (var lane = 0; lane < Vector<long>.Count; lane++)
            {
                Unsafe.Add(ref counts, (nint)vector[lane])++;
            }
        }

        foreach (var index in classes[(vectors.Length * Vector<long>.Count)..])
        {
            _counts[index]++;
        }
    }

    private double Ranked(long rank)
    {
        var index = 0;
        for (long passed = _counts[0]; passed <= rank; passed += _counts[index])
        {
            index++;
        }

        return _lowest + (index * _width);
    }
}
