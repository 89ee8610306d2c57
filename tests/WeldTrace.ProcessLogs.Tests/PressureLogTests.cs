using System.Globalization;
using System.Text;

namespace WeldTrace.ProcessLogs.Tests;

/// <summary>Files of a bench logger: what is read from them, and what is refused because it would make a reading doubtful.</summary>
public sealed class PressureLogTests
{
    [Theory]
    [InlineData(
        "Time [s],Pressure [bar],Vessel temperature [°C],Ambient temperature [°C]\n",
        ",",
        1
    )]
    [InlineData(
        "Time [s];Pressure [bar];Vessel temperature [°C];Ambient temperature [°C]\n",
        ";",
        1
    )]
    [InlineData("t_s\tp_psi\tTvessel_degC\tambient_degC\n", "\t", 14.503773773)]
    public async Task Log_OfAnyDialect_IsReadInBarAndDegrees(
        string head,
        string mark,
        double perBar
    )
    {
        var read = await ReadAsync(head, mark, i => (i, (40 - (i * 0.001)) * perBar));

        Assert.Empty(read.Problems);
        var samples = read.Trace!.Samples;
        Assert.Equal(30, samples.Count);
        Assert.Equal(39.971, samples[^1].Gauge.Bar, 1e-4);
        Assert.Equal(29, samples[^1].Time.TotalSeconds, 1e-9);
        Assert.Equal(20.5, samples[3].Medium!.Value.DegreesCelsius, 1e-6);
        Assert.Equal(18.25, samples[3].Ambient!.Value.DegreesCelsius, 1e-6);
        Assert.Equal(64, read.Sha256.Length);
    }

    [Fact]
    public async Task Gap_IsRefusedWithItsLine()
    {
        var read = await ReadAsync(Head, ",", i => (i < 20 ? i : i + 60, 40));

        var problem = Assert.Single(read.Problems);
        Assert.Equal((LogProblemCode.Gap, 22), (problem.Code, (int)problem.Line!));
        Assert.Null(read.Trace);
    }

    [Fact]
    public async Task Clock_PutBack_IsRefused()
    {
        var read = await ReadAsync(Head, ",", i => (i < 20 ? i : i - 10, 40));

        Assert.Equal(LogProblemCode.TimeBackwards, read.Problems[0].Code);
    }

    /// <summary>From bar to psi, to kPa and to MPa in the middle of a file.</summary>
    [Theory]
    [InlineData(14.5038)]
    [InlineData(100)]
    [InlineData(0.1)]
    public async Task Unit_ThatChanges_IsRefused(double factor)
    {
        var read = await ReadAsync(Head, ",", i => (i, i < 15 ? 40 : 40 * factor));

        Assert.Equal(LogProblemCode.UnitChanged, Assert.Single(read.Problems).Code);
    }

    /// <summary>A vessel that bursts falls to zero at once; that is no change of the unit.</summary>
    [Fact]
    public async Task Burst_IsTaken()
    {
        var read = await ReadAsync(Head, ",", i => (i, i < 15 ? 90 + i : 0));

        Assert.Empty(read.Problems);
        Assert.Equal(104, read.Trace!.Highest.Gauge.Bar, 1e-9);
    }

    [Fact]
    public async Task Log_WithoutPressure_NamesTheColumn()
    {
        var read = await ReadAsync(
            "Time [s],Flow,Vessel temperature [°C],Ambient temperature [°C]\n",
            ",",
            i => (i, 40)
        );

        var problem = Assert.Single(read.Problems);
        Assert.Equal(LogProblemCode.MissingColumn, problem.Code);
        Assert.Contains("gauge pressure", problem.Sentence, StringComparison.Ordinal);
    }

    private const string Head =
        "Time [s],Pressure [bar],Vessel temperature [°C],Ambient temperature [°C]\n";

    private static async Task<PressureLogResult> ReadAsync(
        string head,
        string mark,
        Func<int, (int Seconds, double Pressure)> row
    )
    {
        var text = new StringBuilder(head);
        for (var i = 0; i < 30; i++)
        {
            var (seconds, pressure) = row(i);
            text.AppendJoin(
                    mark,
                    seconds.ToString(CultureInfo.InvariantCulture),
                    pressure.ToString("0.0000", CultureInfo.InvariantCulture),
                    "20.50",
                    "18.25"
                )
                .Append('\n');
        }

        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(text.ToString()));
        return await PressureLog.ReadAsync(stream, TestContext.Current.CancellationToken);
    }
}
