using System.Globalization;
using System.Text;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>One small log written in many dialects: what is recognised, that the numbers are exact, and that it comes back byte for byte.</summary>
public sealed class DialectTests
{
    private static readonly string[] Units = ["s", "kN", "mm/min"];

    public static TheoryData<string, string> Dialects =>
        new()
        {
            { "comma", Write(",", ".", "\n", "t [s],Fz [kN],feed [mm/min]\n") },
            {
                "semicolon and decimal comma",
                Write(";", ",", "\r\n", "t [s];Fz [kN];feed [mm/min]\r\n")
            },
            { "tab", Write("\t", ".", "\n", "t (s)\tFz (kN)\tfeed (mm/min)\n") },
            {
                "tab and decimal comma",
                Write("\t", ",", "\r\n", "t / s\tFz / kN\tfeed / mm/min\r\n")
            },
            { "bar", Write("|", ".", "\n", "t_s|Fz_kN|feed_mm_min\n") },
            { "unit row", Write(",", ".", "\n", "t,Fz,feed\ns,kN,mm/min\n") },
            { "unit row in brackets", Write(";", ".", "\n", "t;Fz;feed\n[s];[kN];[mm/min]\n") },
            {
                "comment lines",
                Write(
                    ",",
                    ".",
                    "\n",
                    "# machine 3, run 12\n# operator;A\n\nt [s],Fz [kN],feed [mm/min]\n"
                )
            },
            { "comment before the names", Write(",", ".", "\n", "#t [s],Fz [kN],feed [mm/min]\n") },
            { "quoted names", Write(",", ".", "\n", "\"t [s]\",\"Fz [kN]\",\"feed [mm/min]\"\n") },
            {
                "blank line below the names",
                Write(";", ".", "\n", "t [s];Fz [kN];feed [mm/min]\n\n")
            },
        };

    [Theory]
    [MemberData(nameof(Dialects))]
    public async Task ReadAsync_Dialect_GivesTheSameLogAndTheSameBytes(string name, string text)
    {
        Assert.NotEmpty(name);
        var preview = await PreviewAsync(Encoding.UTF8.GetBytes(text));
        Assert.Equal(
            [LogChannel.Time, LogChannel.AxialForce, LogChannel.TravelSpeed],
            preview.Guess.Columns.Select(column => column.Channel)
        );
        Assert.Equal(Units, preview.Guess.Columns.Select(column => column.Unit));

        var log = await SmallLog.ReadWholeAsync(text, preview.Guess);
        Assert.Equal(Samples().Select(row => row.Force), SmallLog.Values(log, 1));
        Assert.True(log.Header.CsvIsOriginal);
        using var copy = new MemoryStream();
        ProcessLogExport.WriteCsv(log, copy);
        Assert.Equal(text, Encoding.UTF8.GetString(copy.ToArray()));
    }

    [Theory]
    [InlineData("utf-8", LogEncoding.Utf8)]
    [InlineData("utf-16", LogEncoding.Utf16LittleEndian)]
    [InlineData("utf-16BE", LogEncoding.Utf16BigEndian)]
    public async Task ReadAsync_ByteOrderMark_KeepsEncodingAndBytes(
        string encodingName,
        LogEncoding expected
    )
    {
        var encoding = Encoding.GetEncoding(encodingName);
        byte[] bytes =
        [
            .. encoding.GetPreamble(),
            .. encoding.GetBytes(Write(";", ",", "\r\n", "t [s];Fz [kN];tool temp [°C]\r\n")),
        ];
        await RoundTripAsync(bytes, expected, hasMark: true);
    }

    [Theory]
    [InlineData("utf-16", LogEncoding.Utf16LittleEndian)]
    [InlineData("utf-16BE", LogEncoding.Utf16BigEndian)]
    [InlineData("iso-8859-1", LogEncoding.Latin1)]
    public async Task ReadAsync_NoByteOrderMark_KeepsEncodingAndBytes(
        string encodingName,
        LogEncoding expected
    )
    {
        var bytes = Encoding
            .GetEncoding(encodingName)
            .GetBytes(Write(";", ",", "\r\n", "t [s];Fz [kN];tool temp [°C]\r\n"));
        await RoundTripAsync(bytes, expected, hasMark: false);
    }

    [Fact]
    public async Task ReadAsync_NoHeader_NamesColumnsByNumber()
    {
        var preview = await PreviewAsync(Encoding.UTF8.GetBytes(Write(",", ".", "\n", "")));

        Assert.Equal(
            ["column 1", "column 2", "column 3"],
            preview.Columns.Select(column => column.Header)
        );
        Assert.Equal((0, 1), (preview.Dialect.HeaderLine, preview.Dialect.FirstDataLine));
    }

    [Fact]
    public async Task ReadAsync_BadFirstRow_IsNotTakenForAHeading()
    {
        var text = new SmallLog().InsertLine(2, "0.0,1.0,2.0").Text;
        var result = await SmallLog.ReadAsync(text);

        Assert.Equal(
            (LogProblemCode.WrongFieldCount, 2L),
            (result.Problems[0].Code, result.Problems[0].Line)
        );
    }

    [Fact]
    public async Task Preview_Rate_IsOfTheFirstRows()
    {
        var preview = await PreviewAsync(Encoding.UTF8.GetBytes(new SmallLog().Text));
        Assert.Equal(10, preview.SamplesPerSecond!.Value, 6);
        Assert.Equal(20, preview.Rows.Count);
    }

    [Fact]
    public async Task ReadAsync_TextColumn_IsGuessedAsNotKept()
    {
        var rows = Enumerable.Range(0, 12).Select(i => $"{i}.0,weld;1,8.{i % 10}\n");
        var text = "t [s],step,Fz [kN]\n" + string.Concat(rows);
        var preview = await PreviewAsync(Encoding.UTF8.GetBytes(text));
        Assert.Equal(LogChannel.Ignored, preview.Guess.Columns[1].Channel);

        var log = await SmallLog.ReadWholeAsync(text, preview.Guess);
        using var copy = new MemoryStream();
        var sha256 = await ProcessLogExport.WriteCsvAsync(log, copy, SmallLog.Cancellation);
        var csv = Encoding.UTF8.GetString(copy.ToArray());
        Assert.StartsWith(
            "\"t [s]\",\"Fz [kN]\"\n0.0,8.0\n1.0,8.1\n",
            csv,
            StringComparison.Ordinal
        );
        Assert.False(log.Header.CsvIsOriginal);
        Assert.Equal(log.Header.CsvSha256, sha256);
    }

    private static async Task RoundTripAsync(byte[] bytes, LogEncoding encoding, bool hasMark)
    {
        var preview = await PreviewAsync(bytes);
        Assert.Equal(encoding, preview.Dialect.Encoding);
        Assert.Equal(hasMark, preview.Dialect.HasByteOrderMark);
        Assert.Equal(LogChannel.ToolTemperature, preview.Guess.Columns[2].Channel);

        var result = await SmallLog.ReadAsync(bytes, preview.Guess);
        Assert.Empty(result.Problems);
        Assert.Equal(bytes.Length, result.Log!.Header.OriginalLengthBytes);
        using var copy = new MemoryStream();
        await ProcessLogExport.WriteCsvAsync(result.Log, copy, SmallLog.Cancellation);
        Assert.Equal(bytes, copy.ToArray());
    }

    private static async Task<LogPreview> PreviewAsync(byte[] bytes)
    {
        var result = await LogPreview.ReadAsync(
            new MemoryStream(bytes),
            null,
            SmallLog.Cancellation
        );
        Assert.Empty(result.Problems);
        return Assert.IsType<LogPreview>(result.Preview);
    }

    private static IEnumerable<(double Time, double Force, double Speed)> Samples() =>
        Enumerable
            .Range(0, 40)
            .Select(i => (i / 4.0, ((i * 37 % 90) - 50) / 1000.0, 200 - (i / 2.0)));

    private static string Write(string delimiter, string mark, string end, string heading)
    {
        var text = new StringBuilder(heading);
        foreach (var (time, force, speed) in Samples())
        {
            var row = string.Create(
                CultureInfo.InvariantCulture,
                $"{time:F2};{force:F3};{speed:F1}"
            );
            text.Append(
                    row.Replace(".", mark, StringComparison.Ordinal)
                        .Replace(";", delimiter, StringComparison.Ordinal)
                )
                .Append(end);
        }

        return text.ToString();
    }
}
