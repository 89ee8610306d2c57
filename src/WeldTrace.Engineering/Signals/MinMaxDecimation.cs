namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Thins a signal for drawing without losing an extreme: first, lowest, highest and last sample of each of
/// equally wide stretches of time (M4; Jugel et al. 2014, PVLDB 7(10)).
/// </summary>
public static class MinMaxDecimation
{
    /// <summary>Samples kept per stretch.</summary>
    public const int SamplesPerStretch = 4;

    /// <summary>
    /// Writes the indices of the kept samples, ascending, repeats included, and returns how many there are.
    /// A stretch is open at its left end and closed at its right end; the first one is closed at both.
    /// </summary>
    /// <param name="timesSeconds">Ascending time stamps.</param>
    /// <param name="values">As many values.</param>
    /// <param name="stretches">Number of stretches; one or more.</param>
    /// <param name="indices">Room for four indices per stretch.</param>
    /// <exception cref="ArgumentException">Lengths do not agree or there is too little room.</exception>
    public static int SelectM4(
        ReadOnlySpan<double> timesSeconds,
        ReadOnlySpan<double> values,
        int stretches,
        Span<int> indices
    )
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(stretches);
        if (timesSeconds.Length != values.Length || indices.Length < stretches * SamplesPerStretch)
        {
            throw new ArgumentException(
                "Times and values differ in length, or there is too little room."
            );
        }

        var (from, kept) = (0, 0);
        for (var stretch = 1; stretch <= stretches && from < values.Length; stretch++)
        {
            var to =
                stretch == stretches ? values.Length : End(timesSeconds, stretch, stretches, from);
            if (to > from)
            {
                Keep(values, from, to, indices.Slice(kept, SamplesPerStretch));
                kept += SamplesPerStretch;
                from = to;
            }
        }

        return kept;
    }

    private static int End(ReadOnlySpan<double> times, int stretch, int stretches, int from)
    {
        var edge = times[0] + ((times[^1] - times[0]) * stretch / stretches);
        while (from < times.Length && times[from] <= edge)
        {
            from++;
        }

        return from;
    }

    private static void Keep(ReadOnlySpan<double> values, int from, int to, Span<int> kept)
    {
        var (lowest, highest) = (from, from);
        for (var i = from; i < to; i++)
        {
            lowest = values[i] < values[lowest] ? i : lowest;
            highest = values[i] > values[highest] ? i : highest;
        }

        kept[0] = from;
        kept[1] = Math.Min(lowest, highest);
        kept[2] = Math.Max(lowest, highest);
        kept[3] = to - 1;
    }
}
