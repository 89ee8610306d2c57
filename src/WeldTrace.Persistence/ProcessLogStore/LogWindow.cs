using Microsoft.EntityFrameworkCore;
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
        if (await db.FindLogHeaderAsync(runId, cancellation) is not { } header)
        {
            return null;
        }

        var time = header.Columns.First(c => c.Channel == LogChannel.Time);
        var places = await db
            .ProcessLogChunks.AsNoTracking()
            .Where(c => c.RunId == runId && c.Ordinal == time.Ordinal)
            .OrderBy(c => c.Position)
            .Select(c => new Place(c.Position, c.Count, c.Minimum, c.Maximum))
            .ToListAsync(cancellation);
        var (first, last) = Stretch(places, time, fromSeconds, toSeconds);
        int[] ends = [first, Math.Max(first, last - 1), last];
        var chunks = await ChunksAsync(db, runId, [time.Ordinal], ends, cancellation);
        var bare = new ProcessLog(header, Sparse(header, places, chunks, time), []);
        var count = LogChart.CountBetween(
            bare,
            fromSeconds ?? double.NegativeInfinity,
            toSeconds ?? double.PositiveInfinity
        );
        int[] ordinals = [.. wanted(header).Append(time.Ordinal).Distinct()];
        if (BucketSize(header.SampleCount, (count + buckets - 1) / buckets) is { } size)
        {
            var levels = await LevelsAsync(db, runId, ordinals, size, cancellation);
            return bare with { Pyramid = levels };
        }

        int[] stretch = [.. Enumerable.Range(first, last - first + 1)];
        chunks = await ChunksAsync(db, runId, ordinals, stretch, cancellation);
        return bare with { Chunks = Sparse(header, places, chunks, time) };
    }

    // The stored bucket size that is fine enough; none when only the samples are.
    private static int? BucketSize(long sampleCount, long samplesPerBucket)
    {
        int? size = null;
        for (var next = 256; next <= samplesPerBucket; next *= 4)
        {
            size = next;
            if (sampleCount / next <= 512)
            {
                break;
            }
        }

        return size;
    }

    private static (int First, int Last) Stretch(
        List<Place> places,
        LogColumn time,
        double? from,
        double? to
    )
    {
        var first = from is { } f ? places.FindIndex(p => time.ToSi(p.Maximum) >= f) : 0;
        var last = to is { } t ? places.FindLastIndex(p => time.ToSi(p.Minimum) <= t) : -1;
        last = last < 0 ? places.Count - 1 : Math.Min(last + 1, places.Count - 1);
        first = first < 0 ? places.Count - 1 : first;
        return (Math.Min(first, last), last);
    }

    private static async Task<IReadOnlyList<PyramidLevel>> LevelsAsync(
        WeldTraceDbContext db,
        Guid runId,
        int[] ordinals,
        int size,
        CancellationToken cancellation
    ) =>
        [
            .. (
                await db
                    .ProcessLogLevels.AsNoTracking()
                    .Where(l =>
                        l.RunId == runId
                        && l.SamplesPerBucket == size
                        && ordinals.Contains(l.Ordinal)
                    )
                    .ToListAsync(cancellation)
            ).Select(ProcessLogStorage.Level),
        ];

    private static async Task<Dictionary<(int Ordinal, int Position), EncodedChunk>> ChunksAsync(
        WeldTraceDbContext db,
        Guid runId,
        int[] ordinals,
        int[] positions,
        CancellationToken cancellation
    ) =>
        (
            await db
                .ProcessLogChunks.AsNoTracking()
                .Where(c =>
                    c.RunId == runId
                    && ordinals.Contains(c.Ordinal)
                    && positions.Contains(c.Position)
                )
                .ToListAsync(cancellation)
        ).ToDictionary(c => (c.Ordinal, c.Position), ProcessLogStorage.Chunk);

    private static EncodedChunk[] Sparse(
        LogHeader header,
        List<Place> places,
        Dictionary<(int, int), EncodedChunk> chunks,
        LogColumn time
    ) =>
        [
            .. places.SelectMany(p =>
                header.Columns.Select(column =>
                    chunks.GetValueOrDefault((column.Ordinal, p.Position))
                    ?? new EncodedChunk(
                        column.Ordinal,
                        p.Position,
                        p.Count,
                        column == time ? p.Minimum : 0,
                        column == time ? p.Maximum : 0,
                        0,
                        ChunkCodec.Int32Zstd,
                        default
                    )
                )
            ),
        ];

    private sealed record Place(int Position, int Count, double Minimum, double Maximum);
}
