using WeldTrace.ProcessLogs;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>
/// The least bytes that a simple lossless codec can reach: for each channel the order-0 entropy (Shannon 1948) of its values,
/// of their first or of their second differences, whichever is least.
/// </summary>
internal static class EntropyFloor
{
    public static double Bytes(ProcessLog log) =>
        log.Header.Columns.Sum(column => Least(Codes(log, column)) / 8);

    /// <summary>All samples of a column as whole numbers of the last digit.</summary>
    public static int[] Codes(ProcessLog log, LogColumn column)
    {
        using var codec = new ChannelCodec();
        var block = new SampleBlock();
        var codes = new int[log.Header.SampleCount];
        var at = 0;
        foreach (var chunk in log.Chunks.Where(chunk => chunk.Ordinal == column.Ordinal))
        {
            codec.Decode(chunk.Bytes.Span, block);
            block.Codes.CopyTo(codes.AsSpan(at));
            at += block.Count;
        }

        return codes;
    }

    private static double Least(int[] codes)
    {
        var least = Bits(codes);
        for (var order = 1; order <= 2; order++)
        {
            for (var i = codes.Length - 1; i > 0; i--)
            {
                codes[i] -= codes[i - 1];
            }

            least = Math.Min(least, Bits(codes));
        }

        return least;
    }

    private static double Bits(int[] codes)
    {
        var counts = new Dictionary<int, int>();
        foreach (var code in codes)
        {
            counts[code] = counts.GetValueOrDefault(code) + 1;
        }

        return counts.Values.Sum(count => -count * Math.Log2((double)count / codes.Length));
    }
}
