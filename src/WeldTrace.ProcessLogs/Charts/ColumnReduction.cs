using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs.Charts;

/// <summary>Smallest and largest sample of stretches of equally many samples, in the unit as logged.</summary>
internal static class ColumnReduction
{
    public static BucketExtremes Of(
        ProcessLog log,
        SampleAccess samples,
        LogColumn column,
        BucketedStretch stretch
    )
    {
        var found = BucketExtremes.None(stretch.Buckets);
        if (LevelOf(log, column, stretch.PerBucket) is { } level)
        {
            FromLevel(level, samples.Block(level.Bytes.Span), stretch, found);
        }
        else
        {
            FromSamples(samples, column, stretch, found);
        }

        return found;
    }

    private static PyramidLevel? LevelOf(ProcessLog log, LogColumn column, long perBucket)
    {
        PyramidLevel? coarsest = null;
        foreach (var level in log.Pyramid)
        {
            if (
                level.Ordinal == column.Ordinal
                && level.SamplesPerBucket <= perBucket
                && level.SamplesPerBucket > (coarsest?.SamplesPerBucket ?? 0)
            )
            {
                coarsest = level;
            }
        }

        return coarsest;
    }

    private static void FromSamples(
        SampleAccess samples,
        LogColumn column,
        BucketedStretch stretch,
        BucketExtremes found
    )
    {
        for (var done = 0L; done < stretch.Count; )
        {
            var at = stretch.First + done;
            var block = samples.Chunk(column, (int)(at / ColumnBuffer.Capacity));
            var from = (int)(at % ColumnBuffer.Capacity);
            var taken = (int)Math.Min(block.Count - from, stretch.Count - done);
            for (var next = from; next < from + taken; )
            {
                var bucket = (done + next - from) / stretch.PerBucket;
                var length = (int)
                    Math.Min(
                        ((bucket + 1) * stretch.PerBucket) - (done + next - from),
                        from + taken - next
                    );
                var (minimum, maximum) = block.ExtremesOf(next, length);
                found.Add(bucket, minimum, maximum);
                next += length;
            }

            done += taken;
        }
    }

    private static void FromLevel(
        PyramidLevel level,
        SampleBlock pairs,
        BucketedStretch stretch,
        BucketExtremes found
    )
    {
        var size = level.SamplesPerBucket;
        var last = (int)((stretch.First + stretch.Count - 1) / size);
        for (var i = (int)(stretch.First / size); i <= last; )
        {
            // All of the level's buckets that begin in the same bucket of the chart.
            var bucket = Math.Max(0, ((long)i * size) - stretch.First) / stretch.PerBucket;
            var end = stretch.First + ((bucket + 1) * stretch.PerBucket);
            var next = (int)Math.Min(last + 1, (end + size - 1) / size);
            found.Add(
                bucket,
                pairs.ExtremesOf(i, next - i).Minimum,
                pairs.ExtremesOf(i + level.Count, next - i).Maximum
            );
            i = next;
        }
    }
}
