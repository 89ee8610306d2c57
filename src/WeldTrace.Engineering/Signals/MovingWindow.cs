namespace WeldTrace.Engineering.Signals;

/// <summary>The last samples of a channel, and what a filter makes of them. Of an even number of samples the median is the mean of the middle two.</summary>
public sealed class MovingWindow
{
    private readonly SampleFilter _filter;
    private readonly double[] _last;
    private readonly double[] _sorted;
    private int _count;
    private int _next;

    /// <summary>An empty window.</summary>
    /// <param name="filter">Filter.</param>
    /// <exception cref="ArgumentException">The filter is not sensible.</exception>
    public MovingWindow(SampleFilter filter)
    {
        ArgumentNullException.ThrowIfNull(filter);
        if (!filter.IsSensible)
        {
            throw new ArgumentException($"A {filter.Text} can't be taken.", nameof(filter));
        }

        _filter = filter;
        _last = new double[filter.Samples];
        _sorted = new double[filter.Samples];
    }

    /// <summary>Forgets all samples.</summary>
    public void Clear() => (_count, _next) = (0, 0);

    /// <summary>Takes samples in their order.</summary>
    /// <param name="samples">Samples, none of them NaN, in any unit.</param>
    /// <param name="filtered">What the filter shows at each, in the same unit; at least as long.</param>
    public void Apply(ReadOnlySpan<double> samples, Span<double> filtered)
    {
        for (var i = 0; i < samples.Length; i++)
        {
            filtered[i] = Add(samples[i]);
        }
    }

    private double Add(double sample)
    {
        if (_filter.Kind == SampleFilterKind.MovingMedian)
        {
            Sort(sample);
        }

        _last[_next] = sample;
        _next = (_next + 1) % _last.Length;
        _count = Math.Min(_count + 1, _last.Length);
        return _filter.Kind == SampleFilterKind.MovingMedian ? Median() : Mean();
    }

    // Takes the oldest sample out of the order once the window is full, and puts the new one in.
    private void Sort(double sample)
    {
        var held = _count;
        if (held == _last.Length)
        {
            var oldest = Array.BinarySearch(_sorted, 0, held, _last[_next]);
            Array.Copy(_sorted, oldest + 1, _sorted, oldest, held - oldest - 1);
            held--;
        }

        var at = Array.BinarySearch(_sorted, 0, held, sample);
        at = at < 0 ? ~at : at;
        Array.Copy(_sorted, at, _sorted, at + 1, held - at);
        _sorted[at] = sample;
    }

    private double Median() =>
        int.IsOddInteger(_count)
            ? _sorted[_count / 2]
            : (_sorted[(_count / 2) - 1] + _sorted[_count / 2]) / 2;

    // Added up anew each time: a running sum would carry its rounding through the whole log.
    private double Mean()
    {
        var sum = 0.0;
        for (var i = 0; i < _count; i++)
        {
            sum += _last[i];
        }

        return sum / _count;
    }
}
