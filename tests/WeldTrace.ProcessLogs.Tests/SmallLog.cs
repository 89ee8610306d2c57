using System.Globalization;
using System.Text;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>A small log of four columns, to be changed line by line; line 1 is the header.</summary>
internal sealed class SmallLog
{
    public const string Header = "t [s],Fz [kN],feed [mm/min],z [mm]";
    private const int Rows = 30;

    private readonly List<string> _lines = [Header];

    public SmallLog()
    {
        for (var i = 0; i < Rows; i++)
        {
            _lines.Add(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{i * 0.1:F1},{8 + (i % 5 * 0.125):F3},{200.0:F1},{-3 - (i * 0.001):F4}"
                )
            );
        }
    }

    public static LogMapping Mapping { get; } =
        new([
            new("t [s]", LogChannel.Time, "s"),
            new("Fz [kN]", LogChannel.AxialForce, "kN"),
            new("feed [mm/min]", LogChannel.TravelSpeed, "mm/min"),
            new("z [mm]", LogChannel.PlungeDepth, "mm", -1),
        ]);

    public static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public string Text => string.Join('\n', _lines) + "\n";

    /// <summary>Replaces a line, counted from 1.</summary>
    public SmallLog WithLine(int line, string text)
    {
        _lines[line - 1] = text;
        return this;
    }

    public SmallLog InsertLine(int line, string text)
    {
        _lines.Insert(line - 1, text);
        return this;
    }

    public string Line(int line) => _lines[line - 1];

    public Task<LogReadResult> ReadAsync() => ReadAsync(Text);

    public static Task<LogReadResult> ReadAsync(string text, LogMapping? mapping = null) =>
        ReadAsync(Encoding.UTF8.GetBytes(text), mapping);

    public static Task<LogReadResult> ReadAsync(byte[] bytes, LogMapping? mapping = null) =>
        ProcessLogReader.ReadAsync(new MemoryStream(bytes), mapping ?? Mapping, null, Cancellation);

    public static async Task<ProcessLog> ReadWholeAsync(string text, LogMapping? mapping = null)
    {
        var result = await ReadAsync(text, mapping);
        Assert.Empty(result.Problems);
        return Assert.IsType<ProcessLog>(result.Log);
    }

    /// <summary>All samples of a column, as logged.</summary>
    public static double[] Values(ProcessLog log, int ordinal)
    {
        using var codec = new ChannelCodec();
        var block = new SampleBlock();
        var all = new List<double>();
        foreach (var chunk in log.Chunks.Where(chunk => chunk.Ordinal == ordinal))
        {
            codec.Decode(chunk.Bytes.Span, block);
            var values = new double[block.Count];
            block.CopyValuesTo(values);
            all.AddRange(values);
        }

        return [.. all];
    }
}
