namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Renders a log as text in UTF-8, piece by piece.</summary>
internal sealed class CsvRenderer : IDisposable
{
    private const int PieceSize = 64 * 1024;

    private readonly ProcessLog _log;
    private readonly ChannelCodec _codec = new();
    private readonly SampleBlock[] _blocks;
    private readonly ColumnStyle[] _styles;
    private readonly RowRenderer _rows;
    private readonly byte[] _piece;
    private int _nextChunk;
    private int _row;
    private bool _isStarted;

    public CsvRenderer(ProcessLog log)
    {
        var columns = log.Header.Columns;
        _log = log;
        _blocks = [.. columns.Select(_ => new SampleBlock())];
        _styles = [.. columns.Select(column => new ColumnStyle(column.Decimals, column.IsUniform))];
        var time = columns.FirstOrDefault(column => column.Channel == LogChannel.Time);
        _rows = new RowRenderer(log.Header.Dialect, time?.Ordinal ?? -1, columns.Count)
        {
            Start = log.Header.Start,
        };
        _piece = new byte[Math.Max(PieceSize, _rows.LongestRow)];
    }

    /// <summary>Gives the next piece; it is valid until the next call.</summary>
    public bool TryNext(out ReadOnlyMemory<byte> piece)
    {
        if (!_isStarted)
        {
            _isStarted = true;
            piece = _log.Header.Preamble;
            return true;
        }

        var length = 0;
        while (_piece.Length - length >= _rows.LongestRow && HasRow())
        {
            length += Render(_piece.AsSpan(length));
        }

        piece = _piece.AsMemory(0, length);
        return length > 0;
    }

    public void Dispose() => _codec.Dispose();

    private bool HasRow()
    {
        if (_blocks.Length > 0 && _row < _blocks[0].Count)
        {
            return true;
        }

        if (_nextChunk >= _log.Chunks.Count)
        {
            return false;
        }

        foreach (var block in _blocks)
        {
            _codec.Decode(_log.Chunks[_nextChunk++].Bytes.Span, block);
        }

        _row = 0;
        return HasRow();
    }

    private int Render(Span<byte> text)
    {
        var length = _rows.Render(_blocks, _styles, _row++, text);
        var isLast = _row == _blocks[0].Count && _nextChunk == _log.Chunks.Count;
        if (isLast && !_log.Header.Dialect.EndsWithNewLine)
        {
            return length;
        }

        _rows.NewLine.CopyTo(text[length..]);
        return length + _rows.NewLine.Length;
    }
}
