namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Percentiles by counting samples in classes of equal width, in memory that does not grow with the samples.
/// No class counts beyond 2^32 - 1. When the width is the resolution of the samples the percentiles are exact; else they are within half a width.
/// </summary>
public sealed class CountingHistogram
{
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
        var (perWidth, top) = (1 / _width, _counts.Length - 1);
        foreach (var sample in samples)
        {
            var index = (long)(((sample - _lowest) * perWidth) + 0.5);
            _counts[(int)Math.Clamp(index, 0, top)]++;
        }

        Count += samples.Length;
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
