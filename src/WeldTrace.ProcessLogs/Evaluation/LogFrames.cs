namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Steps through a log chunk by chunk, with the wanted columns decoded as logged.</summary>
internal sealed class LogFrames : IDisposable
{
    private readonly ProcessLog _log;
    private readonly bool[] _isWanted;
    private readonly double[][] _values;
    private readonly SiConversion[] _conversions;
    private readonly ChannelCodec _codec = new();
    private readonly SampleBlock _block = new();
    private int _nextChunk;

    public LogFrames(ProcessLog log, IEnumerable<LogColumn> columns)
    {
        _log = log;
        _isWanted = new bool[log.Header.Columns.Count];
        _conversions = [.. log.Header.Columns.Select(c => c.Conversion)];
        _values = [.. log.Header.Columns.Select(_ => Array.Empty<double>())];
        foreach (var column in columns)
        {
            _isWanted[column.Ordinal] = true;
        }
    }

    /// <summary>Index in the log of the first sample of this frame.</summary>
    public long First { get; private set; }

    /// <summary>Samples in this frame.</summary>
    public int Count { get; private set; }

    public ReadOnlySpan<double> Values(LogColumn column) =>
        _values[column.Ordinal].AsSpan(0, Count);

    /// <summary>A number of this frame in SI.</summary>
    public double Si(LogColumn column, int index) =>
        _conversions[column.Ordinal].ToSi(_values[column.Ordinal][index]);

    /// <summary>The numbers of this frame in SI.</summary>
    public void CopySi(LogColumn column, Span<double> si)
    {
        var values = Values(column);
        var conversion = _conversions[column.Ordinal];
        for (var i = 0; i < values.Length; i++)
        {
            si[i] = conversion.ToSi(values[i]);
        }
    }

    public bool MoveNext()
    {
        (First, Count) = (First + Count, 0);
        for (var i = 0; i < _isWanted.Length && _nextChunk < _log.Chunks.Count; i++)
        {
            Take(_log.Chunks[_nextChunk++]);
        }

        return Count > 0;
    }

    public void Dispose() => _codec.Dispose();

    private void Take(EncodedChunk chunk)
    {
        Count = chunk.Count;
        if (!_isWanted[chunk.Ordinal])
        {
            return;
        }

        ref var values = ref _values[chunk.Ordinal];
        values = values.Length < Count ? new double[Count] : values;
        _codec.Decode(chunk.Bytes.Span, _block);
        _block.CopyValuesTo(values.AsSpan(0, Count));
    }
}
