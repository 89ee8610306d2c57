using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

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
        Span<int> classes = stackalloc int[Batch];
        Count += samples.Length;
        for (; !samples.IsEmpty; samples = samples[Math.Min(Batch, samples.Length)..])
        {
            var batch = samples[..Math.Min(Batch, samples.Length)];
            Classes(batch, classes);
            CountClasses(classes[..batch.Length], 0);
        }
    }

    /// <summary>Counts a batch of whole numbers without turning them into fractions first; for classes of width 1 whose lowest is a whole number.</summary>
    /// <param name="samples">Samples; may be empty.</param>
    /// <exception cref="InvalidOperationException">The classes are of another width, or begin between two whole numbers.</exception>
    public void Add(ReadOnlySpan<int> samples)
    {
        if (_width != 1 || _lowest != Math.Floor(_lowest))
        {
            throw new InvalidOperationException("The classes are not whole numbers.");
        }

        Count += samples.Length;
        CountClasses(samples, (int)_lowest);
    }

    /// <summary>The class of each sample, as many at once as the processor takes.</summary>
    private void Classes(ReadOnlySpan<double> samples, Span<int> classes)
    {
        var (perWidth, top) = (1 / _width, (double)(_counts.Length - 1));
        ref var sample = ref MemoryMarshal.GetReference(samples);
        ref var found = ref MemoryMarshal.GetReference(classes);
        var lowest = Vector256.Create(_lowest);
        var (half, tops) = (Vector256.Create(0.5), Vector256.Create(top));
        var i = 0;
        for (; Avx.IsSupported && i <= samples.Length - Vector256<double>.Count; i += 4)
        {
            var place = ((Vector256.LoadUnsafe(ref sample, (nuint)i) - lowest) * perWidth) + half;
            place = Vector256.MinNative(Vector256.MaxNative(place, Vector256<double>.Zero), tops);
            Avx.ConvertToVector128Int32WithTruncation(place).StoreUnsafe(ref found, (nuint)i);
        }

        for (; i < samples.Length; i++)
        {
            classes[i] = (int)Math.Clamp(((samples[i] - _lowest) * perWidth) + 0.5, 0, top);
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

    private void CountClasses(ReadOnlySpan<int> numbers, int lowest)
    {
        ref var first = ref MemoryMarshal.GetReference(numbers);
        ref var counts = ref MemoryMarshal.GetArrayDataReference(_counts);
        var vectors = MemoryMarshal.Cast<int, Vector<int>>(numbers);
        var lowests = new Vector<int>(lowest);
        var tops = new Vector<uint>((uint)_counts.Length - 1);
        for (var i = 0; i < vectors.Length; i++)
        {
            var places = vectors[i] - lowests;
            if (Vector.GreaterThanAny(Vector.AsVectorUInt32(places), tops))
            {
                Clamped(numbers.Slice(i * Vector<int>.Count, Vector<int>.Count), lowest);
            }
            else if (Vector.EqualsAll(places, new Vector<int>(places[0])))
            {
                // A channel that stands still would else wait for its own last count each time.
                Unsafe.Add(ref counts, (nint)places[0]) += (uint)Vector<int>.Count;
            }
            else
            {
                ref var number = ref Unsafe.Add(ref first, i * Vector<int>.Count);
                for (var lane = 0; lane < Vector<int>.Count; lane++)
                {
                    Unsafe.Add(ref counts, (nint)(Unsafe.Add(ref number, lane) - lowest))++;
                }
            }
        }

        Clamped(numbers[(vectors.Length * Vector<int>.Count)..], lowest);
    }

    private void Clamped(ReadOnlySpan<int> numbers, int lowest)
    {
        foreach (var number in numbers)
        {
            _counts[Math.Clamp((long)number - lowest, 0, _counts.Length - 1)]++;
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
