using System.Globalization;
using System.Text;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>Times as date and time of day (ISO 8601-1:2019, and two forms of machine exports) and as fractions of a day.</summary>
public sealed class TimeStampTests
{
    private static readonly DateTime First = new(2026, 3, 1, 8, 59, 59, DateTimeKind.Utc);

    [Theory]
    [InlineData("yyyy-MM-dd'T'HH:mm:ss.fff", "", ',')]
    [InlineData("yyyy-MM-dd'T'HH:mm:ss.fffffff", "Z", ',')]
    [InlineData("yyyy-MM-dd HH:mm:ss.fff", "+01:00", ';')]
    [InlineData("yyyy-MM-dd'T'HH:mm:ss.ff", "-0330", '\t')]
    [InlineData("dd.MM.yyyy HH:mm:ss,fff", "", ';')]
    [InlineData("yyyy'/'MM'/'dd HH:mm:ss.fff", "", ',')]
    [InlineData("HH:mm:ss.fff", "", ',')]
    public async Task ReadAsync_DateAndTime_CountsFromTheFirstAndComesBackByteForByte(
        string pattern,
        string zone,
        char delimiter
    )
    {
        var text = Write(
            "Timestamp",
            i =>
                First.AddMilliseconds(i * 50).ToString(pattern, CultureInfo.InvariantCulture)
                + zone,
            delimiter
        );
        var preview = await PreviewAsync(text);
        Assert.Equal(LogUnits.TimeStamp, preview.Guess.Columns[0].Unit);
        Assert.Equal(20, preview.SamplesPerSecond!.Value, 6);

        var log = await SmallLog.ReadWholeAsync(text, preview.Guess);
        Assert.Equal(Enumerable.Range(0, 40).Select(i => i * 50 / 1000.0), SmallLog.Values(log, 0));
        using var copy = new MemoryStream();
        ProcessLogExport.WriteCsv(log, copy);
        Assert.Equal(text, Encoding.UTF8.GetString(copy.ToArray()));
    }

    [Fact]
    public async Task ReadAsync_OffsetChangesInTheMiddle_TimeRunsOn()
    {
        // 02:30 summer time is followed by 01:30 winter time; in between one second passes.
        var text = Write(
            "time",
            i => i < 20 ? $"2026-10-25T02:30:{i:00}.0+02:00" : $"2026-10-25T01:30:{i:00}.0+01:00",
            ','
        );
        var log = await SmallLog.ReadWholeAsync(text, (await PreviewAsync(text)).Guess);

        Assert.Equal(39, log.Header.DurationSeconds, 9);
        Assert.False(log.Header.CsvIsOriginal);
    }

    [Fact]
    public async Task ReadAsync_FractionOfADay_IsConverted()
    {
        var text = Write(
            "time [d]",
            i => (46082.25 + (i / 86400.0)).ToString("F9", CultureInfo.InvariantCulture),
            ','
        );
        var log = await SmallLog.ReadWholeAsync(text, (await PreviewAsync(text)).Guess);

        Assert.Equal(39, log.Header.DurationSeconds, 3);
        Assert.True(log.Header.CsvIsOriginal);
    }

    [Theory]
    [InlineData("2026-02-29T08:00:00.000")]
    [InlineData("2026-03-01T24:00:00.000")]
    [InlineData("2026-03-01T08:00:00.000+9")]
    [InlineData("12.5")]
    public async Task ReadAsync_NoTimeStamp_IsNamedWithItsLine(string bad)
    {
        var text = Write("time", i => i == 7 ? bad : $"2026-03-01T08:00:{i:00}.000", ',');
        var result = await SmallLog.ReadAsync(
            text,
            new LogMapping([
                new("time", LogChannel.Time, LogUnits.TimeStamp),
                new("Fz [kN]", LogChannel.AxialForce, "kN"),
            ])
        );

        var problem = Assert.Single(result.Problems);
        Assert.Equal((LogProblemCode.NotANumber, 9L), (problem.Code, problem.Line));
        Assert.Contains(bad, problem.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ReadAsync_CommentAmongTheRows_IsPassedOverAndTheOriginalDiffers()
    {
        var text = new SmallLog().InsertLine(9, "# tool changed").Text;
        var log = await SmallLog.ReadWholeAsync(text);

        Assert.Equal(30, log.Header.SampleCount);
        Assert.False(log.Header.CsvIsOriginal);
    }

    private static async Task<LogPreview> PreviewAsync(string text) =>
        (
            await LogPreview.ReadAsync(
                new MemoryStream(Encoding.UTF8.GetBytes(text)),
                null,
                SmallLog.Cancellation
            )
        ).Preview!;

    private static string Write(string time, Func<int, string> stamp, char delimiter)
    {
        var rows = Enumerable.Range(0, 40).Select(i => $"{stamp(i)}{delimiter}{8 + (i % 3)}\n");
        return $"{time}{delimiter}Fz [kN]\n" + string.Concat(rows);
    }
}
