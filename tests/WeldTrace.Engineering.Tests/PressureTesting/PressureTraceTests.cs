using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Engineering.Tests.PressureTesting;

/// <summary>Traces constructed sample by sample, so that hold, rise and loss are known; the rule of 2014/68/EU Annex I 7.4 by hand.</summary>
public sealed class PressureTraceTests
{
    [Fact]
    public void Hold_BeginsWhenFillingEnds_AndLastsWhileThePressureStays()
    {
        // 10 bar/min to 40 bar in 240 s, 600 s held, then vented.
        var trace = Trace(
            t =>
                t <= 240 ? t / 6.0
                : t <= 840 ? 40
                : Math.Max(0, 40 - (t - 840)),
            900
        );

        var hold = Find(trace, 600)!;

        Assert.InRange(hold.Begin.Time.TotalSeconds, 238, 241);
        Assert.InRange(hold.Held.TotalSeconds, 598, 604);
        Assert.Equal(40, hold.Highest.Bar, 1e-9);
        Assert.Equal(10, hold.FastestRise.Bar, 1e-9);
    }

    [Fact]
    public void Hold_ThatLosesItsPressure_ShowsTheLossAtTheRequiredTime()
    {
        var trace = Trace(
            t =>
                t <= 240 ? t / 6.0
                : t <= 400 ? 40
                : 20,
            1200
        );

        var hold = Find(trace, 600)!;

        Assert.Equal(20, hold.End.Gauge.Bar, 1e-9);
        Assert.InRange(hold.Held.TotalSeconds, 599, 602);
    }

    [Fact]
    public void Hold_OfALogThatEndsEarly_IsAsLongAsTheLog()
    {
        var trace = Trace(t => t <= 240 ? t / 6.0 : 40, 500);

        Assert.InRange(Find(trace, 600)!.Held.TotalSeconds, 259, 262);
    }

    [Fact]
    public void Pressure_ThatIsNeverReached_IsNoHold() =>
        Assert.Null(Find(Trace(t => t / 60.0, 600), 600));

    /// <summary>One jump of 15 bar within a slow rise of 2 bar a minute: 17 bar in the minute that holds it, less a sample.</summary>
    [Fact]
    public void FastestRise_IsThatOfTheWorstMinute()
    {
        var trace = Trace(t => (t / 30.0) + (t > 300 ? 15 : 0), 600);

        Assert.InRange(trace.FastestRise(trace.Samples.Count - 1).Bar, 16.9, 17.1);
    }

    [Theory]
    [InlineData(50)]
    [InlineData(600)]
    public void Reduce_KeepsEveryExtreme(int most)
    {
        var trace = Trace(
            t =>
                t == 777 ? 99
                : t == 12_345 ? -3
                : 40 + Math.Sin(t),
            20_000
        );

        var kept = trace.Reduce(most);

        Assert.InRange(kept.Count, most / 2, most + 2);
        Assert.Contains(kept, s => s.Gauge.Bar > 98.9);
        Assert.Contains(kept, s => s.Gauge.Bar < -2.9);
        Assert.Equal(trace.Samples[0], kept[0]);
        Assert.Equal(trace.Samples[^1], kept[^1]);
    }

    /// <summary>2014/68/EU Annex I 7.4 by hand: 1.43·40 = 57.2; with 1.2 times the stress at test 1.25·1.2·40 = 60.</summary>
    [Theory]
    [InlineData(100, 100, 57.2)]
    [InlineData(120, 100, 60)]
    public void GreaterOf_TakesTheGreater(double atTest, double inService, double expectedBar) =>
        Assert.Equal(
            expectedBar,
            TestPressures
                .GreaterOf(
                    Pressure.FromBar(40),
                    Pressure.FromMegapascals(atTest),
                    Pressure.FromMegapascals(inService)
                )
                .Value.Bar,
            1e-9
        );

    private static TraceHold? Find(PressureTrace trace, int seconds) =>
        trace.FindHold(
            Pressure.FromBar(39.2),
            Pressure.FromBar(38.4),
            Pressure.FromBar(0.2),
            TimeSpan.FromSeconds(seconds)
        );

    private static PressureTrace Trace(Func<int, double> bar, int seconds) =>
        new([
            .. Enumerable
                .Range(0, seconds + 1)
                .Select(t => new TraceSample(
                    TimeSpan.FromSeconds(t),
                    Pressure.FromBar(bar(t)),
                    Temperature.FromDegreesCelsius(20)
                )),
        ]);
}
