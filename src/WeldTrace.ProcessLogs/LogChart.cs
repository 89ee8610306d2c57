using WeldTrace.ProcessLogs.Charts;

namespace WeldTrace.ProcessLogs;

/// <summary>Smallest and largest sample of a stretch of time; time stamps as logged, values in SI.</summary>
public readonly record struct ChartBucket(
    double FromSeconds,
    double ToSeconds,
    double MinimumSi,
    double MaximumSi
);

/// <summary>Thins a column for drawing; every extreme stays visible.</summary>
public static class LogChart
{
    /// <summary>
    /// At most <paramref name="mostBuckets"/> stretches of equally many samples between two times. Read from the
    /// pyramid when it is fine enough (the outer stretches may then reach a little beyond), else from the samples.
    /// </summary>
    /// <param name="log">The log.</param>
    /// <param name="column">One of its columns.</param>
    /// <param name="fromSeconds">Time stamp as logged; before the start means the start.</param>
    /// <param name="toSeconds">Time stamp as logged; after the end means the end.</param>
    /// <param name="mostBuckets">One or more.</param>
    public static IReadOnlyList<ChartBucket> Envelope(
        ProcessLog log,
        LogColumn column,
        double fromSeconds,
        double toSeconds,
        int mostBuckets
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(column);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mostBuckets);
        var time = log.Header.Columns.First(known => known.Channel == LogChannel.Time);
        using var samples = new SampleAccess(log);
        var first = samples.FirstNotBefore(time, fromSeconds);
        var count = samples.FirstAfter(time, toSeconds) - first;
        return count <= 0 ? [] : Envelope(log, column, samples, first, count, mostBuckets);
    }

    /// <summary>Samples between two times, both included; needs the chunks of the time at both ends only.</summary>
    /// <param name="log">The log.</param>
    /// <param name="fromSeconds">Time stamp as logged.</param>
    /// <param name="toSeconds">Time stamp as logged.</param>
    public static long CountBetween(ProcessLog log, double fromSeconds, double toSeconds)
    {
        ArgumentNullException.ThrowIfNull(log);
        var time = log.Header.Columns.First(known => known.Channel == LogChannel.Time);
        using var samples = new SampleAccess(log);
        return samples.FirstAfter(time, toSeconds) - samples.FirstNotBefore(time, fromSeconds);
    }

    /// <summary>The whole run; a run that the pyramid is fine enough for needs no samples.</summary>
    public static IReadOnlyList<ChartBucket> Envelope(
        ProcessLog log,
        LogColumn column,
        int mostBuckets
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(column);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mostBuckets);
        using var samples = new SampleAccess(log);
        return Envelope(log, column, samples, 0, log.Header.SampleCount, mostBuckets);
    }

    private static ChartBucket[] Envelope(
        ProcessLog log,
        LogColumn column,
        SampleAccess samples,
        long first,
        long count,
        int mostBuckets
    )
    {
        var time = log.Header.Columns.First(known => known.Channel == LogChannel.Time);
        var perBucket = (count + mostBuckets - 1) / mostBuckets;
        var (starts, ends) = ColumnReduction.Of(log, samples, time, first, count, perBucket);
        var (minima, maxima) = ColumnReduction.Of(log, samples, column, first, count, perBucket);
        return
        [
            .. Enumerable
                .Range(0, minima.Length)
                .Where(i => double.IsFinite(starts[i]))
                .Select(i =>
                    Bucket(
                        time.ToSi(starts[i]),
                        time.ToSi(ends[i]),
                        column.ToSi(minima[i]),
                        column.ToSi(maxima[i])
                    )
                ),
        ];
    }

    private static ChartBucket Bucket(double from, double to, double one, double other) =>
        new(from, to, Math.Min(one, other), Math.Max(one, other));
}
