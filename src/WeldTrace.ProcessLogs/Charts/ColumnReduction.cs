using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs.Charts;

/// <summary>Smallest and largest sample of stretches of equally many samples, in the unit as logged.</summary>
internal static class ColumnReduction
{
    public static (double[] Minima, double[] Maxima) Of(
        ProcessLog log,
        SampleAccess samples,
        LogColumn column,
        long first,
        long count,
        long perBucket
    )
    {
        var buckets = new Buckets((int)((count + perBucket - 1) / perBucket));
        var level = log
            .Pyramid.Where(known =>
                known.Ordinal == column.Ordinal && known.SamplesPerBucket <= perBucket
            )
            .MaxBy(known => known.SamplesPerBucket);
        if (level is null)
        {
            FromSamples(samples, column, first, count, perBucket, buckets);
        }
        else
        {
            FromLevel(level, first, count, perBucket, buckets);
        }

        return (buckets.Minima, buckets.Maxima);
    }

    private static void FromSamples(
        SampleAccess samples,
        LogColumn column,
        long first,
        long count,
        long perBucket,
        Buckets buckets
    )
    {
        for (var done = 0L; done < count; )
        {
            var at = first + done;
            var chunk = samples.Chunk(column, (int)(at / ColumnBuffer.Capacity));
            var inChunk = chunk[(int)(at % ColumnBuffer.Capacity)..];
            var taken = (int)Math.Min(inChunk.Length, count - done);
            for (var i = 0; i < taken; i++)
            {
                buckets.Add((done + i) / perBucket, inChunk[i], inChunk[i]);
            }

            done += taken;
        }
    }

    private static void FromLevel(
        PyramidLevel level,
        long first,
        long count,
        long perBucket,
        Buckets buckets
    )
    {
        var pairs = Decode(level);
        var from = first / level.SamplesPerBucket;
        var to = (first + count - 1) / level.SamplesPerBucket;
        for (var i = from; i <= to; i++)
        {
            var bucket = Math.Max(0, (i * level.SamplesPerBucket) - first) / perBucket;
            buckets.Add(bucket, pairs[i], pairs[i + level.Count]);
        }
    }

    private static double[] Decode(PyramidLevel level)
    {
        using var codec = new ChannelCodec();
        var block = new SampleBlock();
        codec.Decode(level.Bytes.Span, block);
        var pairs = new double[block.Count];
        block.CopyValuesTo(pairs);
        return pairs;
    }

    private sealed class Buckets
    {
        public Buckets(int count)
        {
            (Minima, Maxima) = (new double[count], new double[count]);
            Array.Fill(Minima, double.PositiveInfinity);
            Array.Fill(Maxima, double.NegativeInfinity);
        }

        public double[] Minima { get; }

        public double[] Maxima { get; }

        public void Add(long bucket, double minimum, double maximum)
        {
            Minima[bucket] = Math.Min(Minima[bucket], minimum);
            Maxima[bucket] = Math.Max(Maxima[bucket], maximum);
        }
    }
}
