using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs.Charts;

/// <summary>Finds and decodes samples of single columns; keeps the last decoded chunk.</summary>
internal sealed class SampleAccess(ProcessLog log) : IDisposable
{
    private readonly ChannelCodec _codec = new();
    private readonly SampleBlock _block = new();
    private readonly double[] _values = new double[ColumnBuffer.Capacity];
    private EncodedChunk? _decoded;

    private int ChunkCount => log.Chunks.Count / log.Header.Columns.Count;

    /// <summary>Samples of the chunk, in the unit as logged; valid until the next call.</summary>
    public ReadOnlySpan<double> Chunk(LogColumn column, int index)
    {
        var chunk = Encoded(column, index);
        if (chunk != _decoded)
        {
            _codec.Decode(chunk.Bytes.Span, _block);
            _block.CopyValuesTo(_values);
            _decoded = chunk;
        }

        return _values.AsSpan(0, chunk.Count);
    }

    public long FirstNotBefore(LogColumn time, double seconds) =>
        First(time, sample => sample >= seconds);

    public long FirstAfter(LogColumn time, double seconds) =>
        First(time, sample => sample > seconds);

    public void Dispose() => _codec.Dispose();

    private long First(LogColumn time, Func<double, bool> isBeyond)
    {
        for (var index = 0; index < ChunkCount; index++)
        {
            if (isBeyond(time.ToSi(Encoded(time, index).MaximumAsLogged)))
            {
                return ((long)index * ColumnBuffer.Capacity)
                    + FirstIn(Chunk(time, index), time, isBeyond);
            }
        }

        return log.Header.SampleCount;
    }

    private static int FirstIn(
        ReadOnlySpan<double> asLogged,
        LogColumn time,
        Func<double, bool> isBeyond
    )
    {
        var (low, high) = (0, asLogged.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = isBeyond(time.ToSi(asLogged[middle]))
                ? (low, middle)
                : (middle + 1, high);
        }

        return low;
    }

    private EncodedChunk Encoded(LogColumn column, int index) =>
        log.Chunks[(index * log.Header.Columns.Count) + column.Ordinal];
}
