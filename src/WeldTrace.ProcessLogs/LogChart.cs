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
    ) => Envelopes(log, [column], fromSeconds, toSeconds, mostBuckets)[0];

    /// <summary>The whole run; a run that the pyramid is fine enough for needs no samples.</summary>
    public static IReadOnlyList<ChartBucket> Envelope(
        ProcessLog log,
        LogColumn column,
        int mostBuckets
    ) => Envelope(log, column, double.NegativeInfinity, double.PositiveInfinity, mostBuckets);

    /// <summary>The same of several columns at once: what lies at which time is found once for all.</summary>
    /// <param name="log">The log.</param>
    /// <param name="columns">Some of its columns.</param>
    /// <param name="fromSeconds">Time stamp as logged; before the start means the start.</param>
    /// <param name="toSeconds">Time stamp as logged; after the end means the end.</param>
    /// <param name="mostBuckets">One or more.</param>
    /// <returns>In the order of the columns.</returns>
    public static IReadOnlyList<IReadOnlyList<ChartBucket>> Envelopes(
        ProcessLog log,
        IReadOnlyList<LogColumn> columns,
        double fromSeconds,
        double toSeconds,
        int mostBuckets
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mostBuckets);
        var time = log.Header.Columns.First(known => known.Channel == LogChannel.Time);
        using var samples = new SampleAccess(log);
        var first = samples.FirstNotBefore(time, fromSeconds);
        var count = samples.FirstAfter(time, toSeconds) - first;
        if (count <= 0)
        {
            return [.. columns.Select(_ => Array.Empty<ChartBucket>())];
        }

        var stretch = new BucketedStretch(first, count, (count + mostBuckets - 1) / mostBuckets);
        var times = ColumnReduction.Of(log, samples, time, stretch);
        return
        [
            .. columns.Select(column =>
                column.Ordinal == time.Ordinal
                    ? Join(time, times, column, times)
                    : Join(time, times, column, ColumnReduction.Of(log, samples, column, stretch))
            ),
        ];
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

    private static ChartBucket[] Join(
        LogColumn time,
        BucketExtremes times,
        LogColumn column,
        BucketExtremes values
    )
    {
        var (seconds, si) = (
            time.Conversion with
            {
                DigitsPerUnit = 1,
            },
            column.Conversion with
            {
                DigitsPerUnit = 1,
            }
        );
        var joined = new ChartBucket[times.Minima.Length];
        var count = 0;
        for (var i = 0; i < joined.Length; i++)
        {
            if (double.IsFinite(times.Minima[i]))
            {
                var (one, other) = (si.Convert(values.Minima[i]), si.Convert(values.Maxima[i]));
                joined[count++] = new(
                    seconds.Convert(times.Minima[i]),
                    seconds.Convert(times.Maxima[i]),
                    Math.Min(one, other),
                    Math.Max(one, other)
                );
            }
        }

        return count == joined.Length ? joined : joined[..count];
    }
}
