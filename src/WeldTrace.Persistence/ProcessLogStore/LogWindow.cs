using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.Loading;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Persistence.ProcessLogStore;

/// <summary>Loads of a log only what a chart of a stretch of time needs: one level, or the chunks of that stretch.</summary>
public static class LogWindow
{
    /// <summary>
    /// A log with the samples or the levels of the wanted columns between two times, and without bytes elsewhere: only
    /// that stretch can be drawn from it. Null when there is no such log.
    /// </summary>
    /// <param name="db">Context.</param>
    /// <param name="runId">Run or test piece.</param>
    /// <param name="wanted">Ordinals of the columns to be drawn, given the header.</param>
    /// <param name="fromSeconds">Time stamp as logged; null means the start.</param>
    /// <param name="toSeconds">Time stamp as logged; null means the end.</param>
    /// <param name="buckets">Stretches that the chart will have.</param>
    /// <param name="cancellation">Ends the loading.</param>
    public static async Task<ProcessLog?> FindLogWindowAsync(
        this WeldTraceDbContext db,
        Guid runId,
        Func<LogHeader, IEnumerable<int>> wanted,
        double? fromSeconds,
        double? toSeconds,
        int buckets,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(wanted);
        var (from, to) = (
            fromSeconds ?? double.NegativeInfinity,
            toSeconds ?? double.PositiveInfinity
        );
        var isWhole = double.IsNegativeInfinity(from) && double.IsPositiveInfinity(to);
        if (await HeadAsync(db, runId, !isWhole, cancellation) is not { } head)
        {
            return null;
        }

        var samples = new LogRows(db, runId, cancellation);
        int[] ordinals = [.. wanted(head.Header).Append(head.Time.Ordinal).Distinct()];
        if (isWhole && BucketSize(head.Header, head.Header.SampleCount, buckets) is { } whole)
        {
            return new(head.Header, [], await samples.LevelsAsync(ordinals, whole));
        }

        if (head.ArchiveId is { } archive)
        {
            return await db.ReadArchivedLogAsync(archive, runId, head.Header, cancellation);
        }

        head = isWhole ? (await HeadAsync(db, runId, true, cancellation))! : head;
        return await StretchAsync(samples, head, ordinals, (from, to), buckets);
    }

    private static async Task<ProcessLog> StretchAsync(
        LogRows samples,
        LogHead head,
        int[] ordinals,
        (double From, double To) seconds,
        int buckets
    )
    {
        var header = head.Header;
        var (first, last) = head.Stretch(seconds.From, seconds.To);
        var most = head.Places.Skip(first).Take(last - first + 1).Sum(p => (long)p.Count);
        if (BucketSize(header, most, buckets) is not null)
        {
            // Which level will do is told by the samples between both times, and those by the time at both ends.
            var ends = await samples.ChunksAsync([head.Time.Ordinal], [first, last]);
            var bare = new ProcessLog(header, head.Sparse(ends), []);
            var count = LogChart.CountBetween(bare, seconds.From, seconds.To);
            if (BucketSize(header, count, buckets) is { } size)
            {
                return bare with { Pyramid = await samples.LevelsAsync(ordinals, size) };
            }
        }

        int[] stretch = [.. Enumerable.Range(first, last - first + 1)];
        return new(header, head.Sparse(await samples.ChunksAsync(ordinals, stretch)), []);
    }

    // The stored bucket size that is fine enough; none when only the samples are.
    private static int? BucketSize(LogHeader header, long samples, int buckets)
    {
        var perBucket = (samples + buckets - 1) / buckets;
        int? size = null;
        for (var next = 256; next <= perBucket; next *= 4)
        {
            size = next;
            if (header.SampleCount / next <= 512)
            {
                break;
            }
        }

        return size;
    }

    private const string HeaderOfRun =
        "SELECT header::text, archive_id FROM process_logs WHERE run_id = $1";

    private const string PlacesOfTime = """
        SELECT position, count, minimum, maximum FROM process_log_chunks
        WHERE run_id = $1 AND ordinal = (
            SELECT (found ->> 'ordinal')::int
            FROM process_logs, jsonb_array_elements(header -> 'columns') found
            WHERE run_id = $1 AND found ->> 'channel' = 'time'
            LIMIT 1)
        ORDER BY position
        """;

    private static async Task<LogHead?> HeadAsync(
        WeldTraceDbContext db,
        Guid runId,
        bool withPlaces,
        CancellationToken cancellation
    )
    {
        Statement<LogHead> head = new(
            HeaderOfRun,
            row =>
                new(HeaderJson.Read(row.GetString(0)), row.IsDBNull(1) ? null : row.GetGuid(1), []),
            runId
        );
        Statement<ChunkPlace> places = new(
            PlacesOfTime,
            row => new(row.GetInt32(0), row.GetInt32(1), row.GetDouble(2), row.GetDouble(3)),
            runId
        );
        await db.ReadPreparedAsync(withPlaces ? [head, places] : [head], cancellation);
        return head.Rows is [var found] ? found with { Places = places.Rows } : null;
    }
}
