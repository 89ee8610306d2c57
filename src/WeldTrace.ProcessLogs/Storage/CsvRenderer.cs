using System.Globalization;
using WeldTrace.ProcessLogs.Reading;

namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Renders a log as text in UTF-8, piece by piece.</summary>
internal sealed class CsvRenderer : IDisposable
{
    private const int PieceSize = 64 * 1024;
    private const int LongestNumber = 40;

    private static readonly string[] FixedFormats =
    [
        .. Enumerable
            .Range(0, PowersOfTen.MostDigits + 1)
            .Select(decimals => string.Create(CultureInfo.InvariantCulture, $"F{decimals}")),
    ];

    private readonly ProcessLog _log;
    private readonly ChannelCodec _codec = new();
    private readonly SampleBlock[] _blocks;
    private readonly byte[] _piece;
    private readonly byte _mark;
    private readonly byte[] _newLine;
    private readonly int _longestRow;
    private int _nextChunk;
    private int _row;
    private bool _isStarted;

    public CsvRenderer(ProcessLog log)
    {
        _log = log;
        _blocks = [.. log.Header.Columns.Select(_ => new SampleBlock())];
        _mark = (byte)log.Header.Dialect.DecimalMark;
        _newLine = log.Header.Dialect.HasCarriageReturns ? "\r\n"u8.ToArray() : "\n"u8.ToArray();
        _longestRow = (_blocks.Length * LongestNumber) + _newLine.Length;
        _piece = new byte[Math.Max(PieceSize, _longestRow)];
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
        while (_piece.Length - length >= _longestRow && HasRow())
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
        var length = 0;
        for (var ordinal = 0; ordinal < _blocks.Length; ordinal++)
        {
            var column = _log.Header.Columns[ordinal];
            length +=
                _log.Header.Start is { } start && column.Channel == LogChannel.Time
                    ? Render(_blocks[ordinal], start, text[length..])
                    : Render(_blocks[ordinal], column, text[length..]);
            text[length++] = (byte)_log.Header.Dialect.Delimiter;
        }

        length--;
        _row++;
        var isLast = _row == _blocks[0].Count && _nextChunk == _log.Chunks.Count;
        if (isLast && !_log.Header.Dialect.EndsWithNewLine)
        {
            return length;
        }

        _newLine.CopyTo(text[length..]);
        return length + _newLine.Length;
    }

    private int Render(SampleBlock block, LogStart start, Span<byte> text)
    {
        var since = block.IsFixedDecimal
            ? block.Codes[_row] * PowersOfTen.AsInteger(TimeStampText.MostDecimals - block.Decimals)
            : (long)Math.Round(block.FloatValues[_row] * 1e9);
        return TimeStampText.Write(start.Nanoseconds + since, start.Form, text);
    }

    private int Render(SampleBlock block, LogColumn column, Span<byte> text)
    {
        if (block.IsFixedDecimal)
        {
            var code = block.Codes[_row];
            var isNegative = code < 0 || (code == 0 && block.NegativeZeros.BinarySearch(_row) >= 0);
            return DecimalText.Write(code, isNegative, block.Decimals, column.Decimals, _mark, text);
        }

        var format = column.IsUniform ? FixedFormats[column.Decimals] : "R";
        block
            .FloatValues[_row]
            .TryFormat(text, out var length, format, CultureInfo.InvariantCulture);
        text[..length].Replace((byte)'.', _mark);
        return length;
    }
}
