using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.LeakTesting;

/// <summary>One 2 mm bubble at 1 bar carries π/6·8 mm³ · 1e5 Pa = 4.18879e-4 Pa·m³, worked by hand from the volume of a sphere; the published case, a leak-test
/// house's table of times per bubble, is rows F6.P1 to F6.P4 of f_leak.csv.</summary>
public sealed class BubbleImmersionTests
{
    [Theory]
    [InlineData(0, 600, "1e-6", Verdict.Pass)]
    [InlineData(0, 60, "1e-6", Verdict.Undecided)]
    [InlineData(3, 600, "1e-6", Verdict.Undecided)]
    [InlineData(6, 600, "1e-6", Verdict.Fail)]
    [InlineData(1, 600, "1e-5", Verdict.Pass)]
    public void Evaluate_AgainstLimit_NeedsEnoughTime(
        int count,
        double seconds,
        string limit,
        Verdict verdict
    )
    {
        var result = BubbleImmersion.Evaluate(
            Seen(count, seconds),
            WrittenLimit.Parse(limit, "Pa m3/s")
        );
        Assert.Equal(verdict, result.Value.Judgement!.Verdict);
    }

    [Fact]
    public void Evaluate_NoBubble_GivesTheSensitivityLimit()
    {
        var result = BubbleImmersion.Evaluate(Seen(0, 600)).Value;
        Assert.Equal(0, result.Rate.SiValue);
        Assert.Equal(4.18879020e-4 / 600, result.SensitivityLimit.SiValue, 1e-12);
        Assert.Equal(result.SensitivityLimit, result.ExpandedUncertainty);
        Assert.Null(result.Judgement);
    }

    [Fact]
    public void Evaluate_OneBubble_CombinesCountAndDiameter()
    {
        var result = BubbleImmersion.Evaluate(Seen(1, 600)).Value;
        var oneBubble = 4.18879020e-4 / 600;
        Assert.Equal(oneBubble, result.Rate.SiValue, 1e-14);
        Assert.Equal(oneBubble * Math.Sqrt(1 + 0.36), result.ExpandedUncertainty.SiValue, 1e-14);
    }

    [Fact]
    public void Evaluate_NegativeCount_Refuses() =>
        Assert.True(BubbleImmersion.Evaluate(Seen(-1, 60)).IsRefused);

    [Fact]
    public void PressureAtDepth_TenCentimetresOfWater_AddsTenMillibar()
    {
        var pressure = BubbleImmersion.PressureAtDepth(
            Pressure.FromPascals(101325),
            Length.FromMillimetres(100)
        );
        Assert.Equal(101325 + 978.70, pressure.Pascals, 1e-1);
    }

    private static BubbleObservation Seen(int count, double seconds) =>
        new(
            Length.FromMillimetres(2),
            Length.FromMillimetres(0.2),
            count,
            TimeSpan.FromSeconds(seconds),
            Pressure.FromBar(1)
        );
}
