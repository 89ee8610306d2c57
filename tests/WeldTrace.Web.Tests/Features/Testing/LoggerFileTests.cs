using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Conformity;
using WeldTrace.TestSupport.Database;
using WeldTrace.TestSupport.Records;
using WeldTrace.Web.Features.Testing.PressureTesting;
using WeldTrace.Web.Features.Testing.RecordLeakTest;

namespace WeldTrace.Web.Tests.Features.Testing;

/// <summary>Logger files at the bench: a stage of 12 bar for 600 s, and a leak test at 2 bar against 1E-5 Pa·m³/s in 4 l.</summary>
public sealed class LoggerFileTests(PostgresServerFixture server)
{
    [Fact]
    public async Task Stage_FromItsLog_KeepsTheFileAndIsJudged()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        Accept.All(await BenchCsv.BeginAsync(vessel));

        // 20,000 samples, ten a second: two minutes up to 12 bar, then held.
        Accept.All(
            await StageAsync(vessel, BenchCsv.Of(20_000, 0.1, t => t < 120 ? t / 10 : 12, _ => 20))
        );

        var test = await vessel.Site.Database.ReadAsync(db => db.PressureTests.SingleAsync());
        var reading = Assert.Single(test.Stages).Reading;
        Assert.Equal(Verdict.Pass, test.Stages[0].Verdict);
        Assert.Equal((20_000, "log.csv"), (reading.Log!.Samples, reading.Log.FileName));
        Assert.InRange(reading.HeldSeconds, 1870, 1885);
        Assert.Equal(6, reading.FastestRise!.InUnit(), 1e-3);
        Assert.Empty(await vessel.LedgerProblemsAsync());
        var traces = await Handler(vessel).TracesAsync(test, CancellationToken.None);
        Assert.InRange(traces[0].Count, 100, 610);
    }

    [Fact]
    public async Task Stage_WhoseLogLosesPressure_Fails()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        Accept.All(await BenchCsv.BeginAsync(vessel));

        Accept.All(
            await StageAsync(
                vessel,
                BenchCsv.Of(
                    900,
                    1,
                    t =>
                        t < 120 ? t / 10
                        : t < 300 ? 12
                        : 9,
                    _ => 20
                )
            )
        );

        var test = await vessel.Site.Database.ReadAsync(db => db.PressureTests.SingleAsync());
        Assert.Equal(Verdict.Fail, test.Verdict);
    }

    [Theory]
    [InlineData("gap", "no sample for")]
    [InlineData("low", "never shows a hold")]
    [InlineData("unit", "unit of the logger seems to have changed")]
    [InlineData("text", "")]
    public async Task Log_ThatIsDoubtful_IsRefusedAndNothingIsKept(string what, string words)
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 40);
        Accept.All(await BenchCsv.BeginAsync(vessel));
        var log = what switch
        {
            "gap" => BenchCsv.Of(900, 1, _ => 12, _ => 20, t => t > 400 ? t + 300 : t),
            "low" => BenchCsv.Of(900, 1, _ => 11, _ => 20),
            "unit" => BenchCsv.Of(900, 1, t => t < 400 ? 12 : 12 * 14.504, _ => 20),
            _ => "no log at all",
        };

        var outcome = await StageAsync(vessel, log);

        var refusal = outcome.Refusals[0];
        Assert.Equal("Log", refusal.Field);
        Assert.Contains(words, refusal.Sentence, StringComparison.Ordinal);
        Assert.Equal(
            0,
            await vessel.Site.Database.ReadAsync(db =>
                db.Attachments.CountAsync(a => a.MediaType == "text/csv")
            )
        );
    }

    /// <summary>
    /// The gas cools from 20 to 18 °C and its pressure follows exactly: no leak, though it fell by 20 mbar. With a leak of 4E-5 Pa·m³/s on top,
    /// four times the limit, it fails.
    /// </summary>
    [Theory]
    [InlineData(0, Verdict.Pass)]
    [InlineData(4e-5, Verdict.Fail)]
    public async Task Decay_FromItsLog_IsCompensated(double leak, Verdict expected)
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);
        const int Seconds = 86_400;
        var log = BenchCsv.Of(
            1441,
            60,
            t =>
                (3.013 * (293.15 - (2.0 * t / Seconds)) / 293.15)
                - 1.013
                - (leak * t / 0.004 / 1e5),
            t => 20 - (2.0 * t / Seconds)
        );

        Accept.All(await LeakAsync(vessel, log));

        var test = await vessel.Site.Database.ReadAsync(db => db.LeakTests.SingleAsync());
        Assert.Equal((expected, 121), (test.Verdict, test.Decay!.Readings.Count));
        Assert.Equal(1441, test.Decay.Log!.Samples);
        Assert.Equal(vessel.Inspector.PrintedName, test.Acknowledgement!.PrintedName);
    }

    /// <summary>The sensor falls out of the bath: the temperature jumps to that of the room, the pressure stays.</summary>
    [Fact]
    public async Task Decay_WhoseSensorLeftTheBath_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);

        var outcome = await LeakAsync(
            vessel,
            BenchCsv.Of(1441, 60, _ => 2, t => t < 40_000 ? 20 : 26)
        );

        Assert.Equal("sensor", Assert.Single(outcome.Refusals).Code);
        Assert.Equal(0, await vessel.Site.Database.ReadAsync(db => db.LeakTests.CountAsync()));
    }

    [Fact]
    public async Task Leak_WithoutTheCautions_IsRefused()
    {
        await using var vessel = await RoutedVessel.AtAsync(server, 30);

        var outcome = await LeakAsync(
            vessel,
            BenchCsv.Of(1441, 60, _ => 2, _ => 20),
            cautionsRead: false
        );

        Assert.Equal("CautionsRead", Assert.Single(outcome.Refusals).Field);
    }

    private static Task<Outcome> LeakAsync(
        RoutedVessel vessel,
        string log,
        bool cautionsRead = true
    ) =>
        new RecordLeakTestHandler(
            vessel.Site.Database,
            vessel.Site.Passwords,
            vessel.Site.Arrivals,
            vessel.Site.Clock
        ).HandleAsync(
            vessel.Serial,
            30,
            LeakMethod.PressureDecay,
            new RecordLeakTestForm
            {
                Id = Guid.CreateVersion7(SampleTime.Start),
                AtmosphericPressure = "1013",
                GaugeUncertainty = "0.1",
                TemperatureUncertainty = "0.01",
                VolumeUncertaintyPercent = "1",
                Gauge = "G-4",
                Thermometer = "T-2",
                CautionsRead = cautionsRead,
                Password = WorkingSite.Password,
                Log = File(log),
            },
            vessel.Inspector,
            CancellationToken.None
        );

    private static PressureTestingHandler Handler(RoutedVessel vessel) =>
        new(vessel.Site.Database, vessel.Site.Passwords, vessel.Site.Clock);

    private static Task<Outcome> StageAsync(RoutedVessel vessel, string log) =>
        Handler(vessel)
            .RecordStageAsync(
                vessel.Serial,
                40,
                new PressureStageForm { StageNumber = 1, Log = File(log) },
                vessel.Inspector,
                CancellationToken.None
            );

    private static FormFile File(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        return new FormFile(new MemoryStream(bytes), 0, bytes.Length, "In.Log", "log.csv");
    }
}
