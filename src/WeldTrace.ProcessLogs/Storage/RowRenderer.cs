using System.Globalization;
using WeldTrace.ProcessLogs.Reading;

namespace WeldTrace.ProcessLogs.Storage;

/// <summary>Renders rows of decoded samples as text in UTF-8.</summary>
internal sealed class RowRenderer(LogDialect dialect, int timeOrdinal, int columns)
{
    private const int LongestNumber = 40;

    private static readonly string[] FixedFormats =
    [
        .. Enumerable
            .Range(0, PowersOfTen.MostDigits + 1)
            .Select(decimals => string.Create(CultureInfo.InvariantCulture, $"F{decimals}")),
    ];

    private readonly byte _mark = (byte)dialect.DecimalMark;
    private readonly byte _delimiter = (byte)dialect.Delimiter;
    private readonly byte[] _newLine = dialect.HasCarriageReturns
        ? "\r\n"u8.ToArray()
        : "\n"u8.ToArray();

    public ReadOnlySpan<byte> NewLine => _newLine;

    /// <summary>Room that a row with its end needs at most.</summary>
    public int LongestRow => (columns * LongestNumber) + _newLine.Length;

    /// <summary>The first time stamp, when time is written as date and time of day.</summary>
    public LogStart? Start { get; set; }

    /// <summary>Writes one row without its end; gives the number of bytes.</summary>
    public int Render(
        ReadOnlySpan<SampleBlock> blocks,
        ReadOnlySpan<ColumnStyle> styles,
        int row,
        Span<byte> text
    )
    {
        var length = 0;
        for (var ordinal = 0; ordinal < blocks.Length; ordinal++)
        {
            var block = blocks[ordinal];
            length +=
                ordinal == timeOrdinal && Start is { } start
                    ? RenderStamp(block, start, row, text[length..])
                : block.IsFixedDecimal
                    ? RenderCode(block, styles[ordinal].Decimals, row, text[length..])
                : RenderFloat(block.FloatValues[row], styles[ordinal], text[length..]);
            text[length++] = _delimiter;
        }

        return length - 1;
    }

    private int RenderCode(SampleBlock block, int decimals, int row, Span<byte> text)
    {
        var code = block.Codes[row];
        var isNegative =
            code < 0
            || (code == 0 && block.HasNegativeZeros && block.NegativeZeros.BinarySearch(row) >= 0);
        return DecimalText.Write(code, isNegative, block.Decimals, decimals, _mark, text);
    }

    private int RenderFloat(double value, ColumnStyle style, Span<byte> text)
    {
        var format = style.IsUniform ? FixedFormats[style.Decimals] : "R";
        value.TryFormat(text, out var length, format, CultureInfo.InvariantCulture);
        text[..length].Replace((byte)'.', _mark);
        return length;
    }

    private static int RenderStamp(SampleBlock block, LogStart start, int row, Span<byte> text)
    {
        var since = block.IsFixedDecimal
            ? block.Codes[row] * PowersOfTen.AsInteger(TimeStampText.MostDecimals - block.Decimals)
            : (long)Math.Round(block.FloatValues[row] * 1e9);
        return TimeStampText.Write(start.Nanoseconds + since, start.Form, text);
    }
}
