namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Keeps the first and the last samples of a series, to tell how its end differs from its start.</summary>
internal sealed class SeriesEnds
{
    /// <summary>Most samples that are taken together at an end; of a short series a tenth of it.</summary>
    public const int Most = 256;

    private readonly double[] _first = new double[Most];
    private readonly double[] _last = new double[Most];
    private long _count;

    /// <summary>Mean of the last samples less that of the first; none for fewer than two.</summary>
    public double? Change
    {
        get
        {
            var taken = (int)Math.Clamp(_count / 10, 1, Most);
            var known = (int)Math.Min(_count, Most);
            return _count < 2
                ? null
                : Mean(_last.AsSpan(known - taken, taken)) - Mean(_first.AsSpan(0, taken));
        }
    }

    /// <summary>The same of whole numbers; only those at the ends are looked at.</summary>
    public void Add(ReadOnlySpan<int> samples)
    {
        Span<double> few = stackalloc double[Most];
        var start = samples[..(int)Math.Min(samples.Length, Math.Max(0, Most - _count))];
        // Between the ends nothing is kept: the count alone goes on.
        var end = samples[Math.Max(start.Length, samples.Length - Most)..];
        Add(Widened(start, few));
        _count += samples.Length - start.Length - end.Length;
        Add(Widened(end, few));
    }

    private static Span<double> Widened(ReadOnlySpan<int> samples, Span<double> room)
    {
        for (var i = 0; i < samples.Length; i++)
        {
            room[i] = samples[i];
        }

        return room[..samples.Length];
    }

    public void Add(ReadOnlySpan<double> samples)
    {
        if (_count < Most)
        {
            var room = (int)Math.Min(samples.Length, Most - _count);
            samples[..room].CopyTo(_first.AsSpan((int)_count));
        }

        var known = (int)Math.Min(_count, Most);
        var added = samples[^Math.Min(samples.Length, Most)..];
        var kept = Math.Min(known, Most - added.Length);
        _last.AsSpan(known - kept, kept).CopyTo(_last);
        added.CopyTo(_last.AsSpan(kept));
        _count += samples.Length;
    }

    private static double Mean(ReadOnlySpan<double> samples)
    {
        var sum = 0.0;
        foreach (var sample in samples)
        {
            sum += sample;
        }

        return sum / samples.Length;
    }
}
