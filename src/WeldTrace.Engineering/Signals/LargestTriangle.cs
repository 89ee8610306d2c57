namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Thins a signal by largest triangles (LTTB; Steinarsson 2013, section 4.2): first and last sample kept, from each of the other buckets
/// the sample that spans the largest triangle with the one kept before and the mean of the next bucket. It keeps the look of a curve
/// but can drop an extreme: wherever limits are judged by eye take <see cref="MinMaxDecimation"/>.
/// </summary>
public static class LargestTriangle
{
    /// <summary>Writes the indices of the kept samples, ascending; as many as there is room for, or all samples.</summary>
    /// <param name="places">Ascending place or time of each sample, any unit.</param>
    /// <param name="values">As many finite values, any unit.</param>
    /// <param name="indices">Room for 3 indices or more.</param>
    /// <returns>How many were written.</returns>
    /// <exception cref="ArgumentException">Lengths do not agree or there is too little room.</exception>
    public static int Select(
        ReadOnlySpan<double> places,
        ReadOnlySpan<double> values,
        Span<int> indices
    )
    {
        if (places.Length != values.Length || indices.Length < 3)
        {
            throw new ArgumentException(
                "Places and values differ in length, or there is room for fewer than three."
            );
        }

        var wanted = indices.Length;
        if (values.Length <= wanted)
        {
            for (var i = 0; i < values.Length; i++)
            {
                indices[i] = i;
            }

            return values.Length;
        }

        var every = (values.Length - 2) / (double)(wanted - 2);
        indices[0] = 0;
        for (var bucket = 0; bucket < wanted - 2; bucket++)
        {
            var (from, to) = ((int)(bucket * every) + 1, (int)((bucket + 1) * every) + 1);
            var end = Math.Min((int)((bucket + 2) * every) + 1, values.Length);
            var (x, y) =
                bucket == wanted - 3
                    ? (places[^1], values[^1])
                    : (Mean(places[to..end]), Mean(values[to..end]));
            indices[bucket + 1] = Largest(places, values, indices[bucket], from, to, x, y);
        }

        indices[wanted - 1] = values.Length - 1;
        return wanted;
    }

    private static int Largest(
        ReadOnlySpan<double> places,
        ReadOnlySpan<double> values,
        int before,
        int from,
        int to,
        double nextPlace,
        double nextValue
    )
    {
        var (best, largest) = (from, -1.0);
        for (var i = from; i < to; i++)
        {
            var area = Math.Abs(
                ((places[before] - nextPlace) * (values[i] - values[before]))
                    - ((places[before] - places[i]) * (nextValue - values[before]))
            );
            if (area > largest)
            {
                (best, largest) = (i, area);
            }
        }

        return best;
    }

    private static double Mean(ReadOnlySpan<double> part)
    {
        var sum = 0.0;
        foreach (var value in part)
        {
            sum += value;
        }

        return sum / part.Length;
    }
}
