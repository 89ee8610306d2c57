namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Cuts the rows of a log into chunks and compresses them.</summary>
internal sealed class ChunkWriter : IDisposable
{
    private readonly ChannelCodec _codec = new();
    private readonly ColumnBuffer[] _columns;
    private readonly PyramidBuilder[] _pyramids;
    private readonly List<EncodedChunk> _chunks = [];
    private int _index;

    public ChunkWriter(int columns)
    {
        _columns = [.. Enumerable.Range(0, columns).Select(_ => new ColumnBuffer())];
        _pyramids =
        [
            .. Enumerable.Range(0, columns).Select(ordinal => new PyramidBuilder(ordinal)),
        ];
    }

    public ReadOnlySpan<ColumnBuffer> Columns => _columns;

    /// <summary>Rows of the chunk being filled; the next sample belongs to the row of this number.</summary>
    public int Row { get; private set; }

    /// <summary>Rows of the log so far.</summary>
    public long RowCount { get; private set; }

    public IReadOnlyList<EncodedChunk> Chunks => _chunks;

    public void EndRow()
    {
        RowCount++;
        if (++Row == ColumnBuffer.Capacity)
        {
            Flush();
        }
    }

    public IReadOnlyList<PyramidLevel> Complete()
    {
        if (Row > 0)
        {
            Flush();
        }

        return
        [
            .. _pyramids.SelectMany(
                (pyramid, i) =>
                    pyramid.Complete(
                        _codec,
                        _columns[i].IsFixedDecimal ? _columns[i].Decimals : null
                    )
            ),
        ];
    }

    public void Dispose() => _codec.Dispose();

    private void Flush()
    {
        for (var ordinal = 0; ordinal < _columns.Length; ordinal++)
        {
            _chunks.Add(Encode(ordinal, _columns[ordinal]));
            _columns[ordinal].Clear();
        }

        (Row, _index) = (0, _index + 1);
    }

    private EncodedChunk Encode(int ordinal, ColumnBuffer column)
    {
        var (minimum, maximum, sum) = _pyramids[ordinal].Add(column, Row);
        var bytes = column.IsFloat
            ? _codec.Encode(column.Values(Row))
            : _codec.Encode(column.Codes(Row), column.Decimals, column.NegativeZeros);
        var codec = column.IsFloat ? ChunkCodec.Float64Zstd : ChunkCodec.Int32Zstd;
        return new(ordinal, _index, Row, minimum, maximum, sum, codec, bytes);
    }
}
