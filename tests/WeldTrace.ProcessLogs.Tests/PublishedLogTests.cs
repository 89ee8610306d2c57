using System.Text;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>
/// A log of a real machine that nobody here wrote: the first rows of experiment 01 of the open data set "CNC Mill Tool Wear" of the SMART
/// laboratory at the University of Michigan, 2018 (a milling machine; no welding log is published that could be found). Its
/// description gives one row every 100 ms, positions in mm and velocities in mm/s; that is from memory. It has no column of time.
/// </summary>
public sealed class PublishedLogTests
{
    private static readonly string[] Lines = File.ReadAllLines(
        Path.Combine(AppContext.BaseDirectory, "Data", "milling-excerpt.csv")
    );

    private static readonly LogMapping Mapping = new([
        new("t [s]", LogChannel.Time, "s"),
        new("X_ActualVelocity", LogChannel.TravelSpeed, "mm/s"),
        new("Z_ActualPosition", LogChannel.PlungeDepth, "mm", -1),
        .. Lines[0]
            .Split(',')
            .Where(h => h is not ("X_ActualVelocity" or "Z_ActualPosition"))
            .Select(h => new ColumnMapping(
                h,
                h is "Machining_Process" or "INSPECT" ? LogChannel.Ignored : LogChannel.Other,
                ""
            )),
    ]);

    // As the machine's owner would have it logged: with the time of each row in front.
    private static string Timed =>
        string.Join(
            '\n',
            Lines.Select(
                (line, i) =>
                    i == 0
                        ? $"t [s],{line}"
                        : FormattableString.Invariant($"{(i - 1) * 0.1:F1},{line}")
            )
        ) + "\n";

    [Fact]
    public async Task WithoutATime_IsShownAndThenRefusedForIt()
    {
        var bytes = Encoding.UTF8.GetBytes(string.Join('\n', Lines) + "\n");
        var shown = await LogPreview.ReadAsync(
            new MemoryStream(bytes),
            cancellation: SmallLog.Cancellation
        );
        var read = await SmallLog.ReadAsync(bytes, new(Mapping.Columns.Skip(1).ToList()));

        var preview = Assert.IsType<LogPreview>(shown.Preview);
        Assert.Equal(Lines[0].Split(','), preview.Columns.Select(c => c.Header));
        Assert.Equal(
            ["Machining_Process", "INSPECT"],
            preview.Columns.Where(c => !c.IsNumeric).Select(c => c.Header)
        );
        Assert.Null(preview.SamplesPerSecond);
        Assert.Null(read.Log);
        Assert.Contains(
            read.Problems,
            p => p.Sentence.Contains("time", StringComparison.OrdinalIgnoreCase)
        );
    }

    [Fact]
    public async Task WithATime_IsReadToTheLastDigit()
    {
        var log = await SmallLog.ReadWholeAsync(Timed, Mapping);

        Assert.Equal(12, log.Header.SampleCount);
        Assert.Equal(
            [4, -6.8, -13.8, -14, -13.9, -13.6, -13.9, -13.8, -13.9, -13.9, -14.1, -13.7],
            Values(log, "X_ActualVelocity")
        );
        Assert.All(Values(log, "S_DCBusVoltage"), v => Assert.Equal(2.74E-19, v));
        Assert.Equal([6.96E-07, -5.27E-07, 9.10E-07], Values(log, "S_OutputPower").Take(3));
        Assert.Equal(
            [123, 123, 119, 116, 113, 109, 106, 102.6, 99.1, 95.8, 92.5, 89],
            Values(log, "Z_ActualPosition")
        );
    }

    private static double[] Values(ProcessLog log, string header) =>
        SmallLog.Values(log, log.Header.Columns.Single(c => c.Name == header).Ordinal);
}
