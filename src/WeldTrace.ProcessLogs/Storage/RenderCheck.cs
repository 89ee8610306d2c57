using System.Text;
using WeldTrace.ProcessLogs.Reading;

namespace WeldTrace.ProcessLogs.Storage;

/// <summary>
/// Renders a log again from its compressed samples while it is still being read, and hashes the text: only so does
/// anyone know that the samples give the file back.
/// </summary>
internal sealed class RenderCheck : IDisposable
{
    private const int PieceSize = 64 * 1024;

    private readonly LogDialect _dialect;
    private readonly RowRenderer _rows;
    private readonly ChannelCodec _codec = new();
    private readonly SampleBlock[] _blocks;
    private readonly ColumnStyle[] _styles;
    private readonly HashedStream _hashed = new(Stream.Null);
    private readonly Stream _text;
    private readonly byte[] _piece;
    private bool _isStarted;
    private bool _isSpoiled;

    public RenderCheck(
        LogDialect dialect,
        ReadOnlySpan<byte> preamble,
        int timeOrdinal,
        int columns
    )
    {
        _dialect = dialect;
        _rows = new RowRenderer(dialect, timeOrdinal, columns);
        _blocks = [.. Enumerable.Range(0, columns).Select(_ => new SampleBlock())];
        _styles = new ColumnStyle[columns];
        _piece = new byte[Math.Max(PieceSize, 2 * _rows.LongestRow)];
        _text =
            dialect.Encoding == LogEncoding.Utf8
                ? _hashed
                : Encoding.CreateTranscodingStream(
                    _hashed,
                    dialect.Encoding.ToText(),
                    Encoding.UTF8,
                    leaveOpen: true
                );
        _text.Write(preamble);
    }

    public LogStart? Start
    {
        set => _rows.Start = value;
    }

    /// <summary>Takes the chunks of all columns of the same rows.</summary>
    public void Add(ReadOnlySpan<EncodedChunk> chunks, ReadOnlySpan<ColumnSlice> slices)
    {
        for (var ordinal = 0; ordinal < chunks.Length; ordinal++)
        {
            _isSpoiled |= _isStarted && _styles[ordinal] != slices[ordinal].Style;
            _styles[ordinal] = slices[ordinal].Style;
        }

        if (!_isSpoiled)
        {
            for (var ordinal = 0; ordinal < chunks.Length; ordinal++)
            {
                _codec.Decode(chunks[ordinal].Bytes.Span, _blocks[ordinal]);
            }

            Render(_blocks[0].Count);
        }
    }

    /// <summary>The hash of the text; none when the way to render a column has changed since, so that the whole has to be rendered.</summary>
    public string? Complete(bool endsWithNewLine, ReadOnlySpan<ColumnStyle> styles)
    {
        if (_isSpoiled || !styles.SequenceEqual(_styles))
        {
            return null;
        }

        if (_isStarted && endsWithNewLine)
        {
            _text.Write(_rows.NewLine);
        }

        if (_dialect.Encoding != LogEncoding.Utf8)
        {
            _text.Dispose();
        }

        return _hashed.Sha256();
    }

    public void Dispose()
    {
        _codec.Dispose();
        _hashed.Dispose();
    }

    private void Render(int count)
    {
        var length = 0;
        for (var row = 0; row < count; row++)
        {
            if (_isStarted)
            {
                _rows.NewLine.CopyTo(_piece.AsSpan(length));
                length += _rows.NewLine.Length;
            }

            _isStarted = true;
            length += _rows.Render(_blocks, _styles, row, _piece.AsSpan(length));
            if (_piece.Length - length < 2 * _rows.LongestRow)
            {
                _text.Write(_piece.AsSpan(0, length));
                length = 0;
            }
        }

        _text.Write(_piece.AsSpan(0, length));
    }
}
