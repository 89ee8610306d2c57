namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Smallest and largest sample of every 256 samples of one column, and of four buckets each further up.</summary>
internal sealed class PyramidBuilder(int ordinal)
{
    public const int SamplesPerBucket = 256;
    public const int BucketsPerParent = 4;
    private const int FewestBuckets = 512;

    private readonly List<double> _minima = [];
    private readonly List<double> _maxima = [];

    /// <summary>Takes a chunk and gives its smallest and largest sample and the sum. Only the last chunk may be short.</summary>
    public (double Minimum, double Maximum, double Sum) Add(ColumnSlice slice)
    {
        var count = slice.Count;
        var (minimum, maximum, sum) = (double.PositiveInfinity, double.NegativeInfinity, 0.0);
        for (var from = 0; from < count; from += SamplesPerBucket)
        {
            var length = Math.Min(SamplesPerBucket, count - from);
            var bucket = slice.IsFloat
                ? Of(slice.Values.AsSpan(from, length))
                : Of(slice.Codes.AsSpan(from, length), PowersOfTen.AsDouble(slice.Decimals));
            _minima.Add(bucket.Minimum);
            _maxima.Add(bucket.Maximum);
            minimum = Math.Min(minimum, bucket.Minimum);
            maximum = Math.Max(maximum, bucket.Maximum);
            sum += bucket.Sum;
        }

        return (minimum, maximum, sum);
    }

    public IEnumerable<PyramidLevel> Complete(ChannelCodec codec, int? fixedDecimals)
    {
        var (minima, maxima, size) = (_minima.ToArray(), _maxima.ToArray(), SamplesPerBucket);
        while (true)
        {
            double[] pairs = [.. minima, .. maxima];
            yield return new(ordinal, size, minima.Length, Encode(codec, pairs, fixedDecimals));
            if (minima.Length <= FewestBuckets)
            {
                yield break;
            }

            minima = [.. minima.Chunk(BucketsPerParent).Select(bucket => bucket.Min())];
            maxima = [.. maxima.Chunk(BucketsPerParent).Select(bucket => bucket.Max())];
            size *= BucketsPerParent;
        }
    }

    private static byte[] Encode(ChannelCodec codec, double[] pairs, int? fixedDecimals)
    {
        if (fixedDecimals is not { } decimals)
        {
            return codec.Encode(pairs);
        }

        var scale = PowersOfTen.AsDouble(decimals);
        var codes = Array.ConvertAll(pairs, value => Math.Round(value * scale));
        return codes.All(code => Math.Abs(code) <= int.MaxValue)
            ? codec.Encode(Array.ConvertAll(codes, code => (int)code), decimals)
            : codec.Encode(pairs);
    }

    private static (double Minimum, double Maximum, double Sum) Of(
        ReadOnlySpan<int> codes,
        double scale
    )
    {
        var (minimum, maximum, sum) = (codes[0], codes[0], 0L);
        foreach (var code in codes)
        {
            minimum = Math.Min(minimum, code);
            maximum = Math.Max(maximum, code);
            sum += code;
        }

        return (minimum / scale, maximum / scale, sum / scale);
    }

    private static (double Minimum, double Maximum, double Sum) Of(ReadOnlySpan<double> values)
    {
        var (minimum, maximum, sum) = (values[0], values[0], 0.0);
        foreach (var value in values)
        {
            minimum = Math.Min(minimum, value);
            maximum = Math.Max(maximum, value);
            sum += value;
        }

        return (minimum, maximum, sum);
    }
}
