using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs.Charts;

/// <summary>Finds and decodes samples of single columns; keeps the last decoded chunk.</summary>
internal sealed class SampleAccess(ProcessLog log) : IDisposable
{
    private readonly ChannelCodec _codec = new();
    private readonly SampleBlock _block = new();
    private EncodedChunk? _decoded;

    private int ChunkCount => log.Chunks.Count / log.Header.Columns.Count;

    /// <summary>The chunk unpacked; valid until the next call.</summary>
    public SampleBlock Chunk(LogColumn column, int index)
    {
        var chunk = Encoded(column, index);
        if (!ReferenceEquals(chunk, _decoded))
        {
            _codec.Decode(chunk.Bytes.Span, _block);
            _decoded = chunk;
        }

        return _block;
    }

    /// <summary>Other bytes unpacked; valid until the next call.</summary>
    public SampleBlock Block(ReadOnlySpan<byte> bytes)
    {
        _decoded = null;
        _codec.Decode(bytes, _block);
        return _block;
    }

    public long FirstNotBefore(LogColumn time, double seconds) =>
        double.IsNegativeInfinity(seconds) ? 0 : First(time, sample => sample >= seconds);

    public long FirstAfter(LogColumn time, double seconds) =>
        double.IsPositiveInfinity(seconds)
            ? log.Header.SampleCount
            : First(time, sample => sample > seconds);

    public void Dispose() => _codec.Dispose();

    private long First(LogColumn time, Func<double, bool> isBeyond)
    {
        for (var index = 0; index < ChunkCount; index++)
        {
            var chunk = Encoded(time, index);
            if (isBeyond(time.ToSi(chunk.MaximumAsLogged)))
            {
                var start = (long)index * ColumnBuffer.Capacity;
                return isBeyond(time.ToSi(chunk.MinimumAsLogged))
                    ? start
                    : start + FirstIn(Chunk(time, index), time, isBeyond);
            }
        }

        return log.Header.SampleCount;
    }

    private static int FirstIn(SampleBlock block, LogColumn time, Func<double, bool> isBeyond)
    {
        var (low, high) = (0, block.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = isBeyond(time.ToSi(block.AsLogged(middle)))
                ? (low, middle)
                : (middle + 1, high);
        }

        return low;
    }

    private EncodedChunk Encoded(LogColumn column, int index) =>
        log.Chunks[(index * log.Header.Columns.Count) + column.Ordinal];
}
