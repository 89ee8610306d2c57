using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.PressureTesting;

/// <summary>47.3 MPa over 20 MPa is 2.365, margin 0.57667 on a factor of 1.5 (d_vessel.csv, D12.4). Burst at no less than 1.5 times the operating pressure: common practice, no source.</summary>
public sealed class BurstRatioTests
{
    [Theory]
    [InlineData(47.3, "1.50", Verdict.Pass)]
    [InlineData(47.3, "2.365", Verdict.Undecided)]
    [InlineData(47.3, "2.50", Verdict.Fail)]
    public void Evaluate_AgainstFactor_GivesTheVerdict(
        double megapascals,
        string factor,
        Verdict verdict
    )
    {
        var burst = Evaluate(megapascals, factor).Value;
        Assert.Equal(2.365, burst.Ratio, 1e-12);
        Assert.Equal(0.02, burst.ExpandedUncertainty, 1e-12);
        Assert.Equal(verdict, burst.Judgement.Verdict);
    }

    [Fact]
    public void Evaluate_Margin_MatchesCheckedValue() =>
        Assert.Equal(0.5766666667, Evaluate(47.3, "1.5").Value.Margin, 1e-9);

    [Fact]
    public void Evaluate_NothingMeasured_Refuses() =>
        Assert.Equal("burst pressure", Assert.Single(Evaluate(0, "1.5").Refusals).Where);

    private static Computed<BurstRatio> Evaluate(double megapascals, string factor) =>
        BurstRatio.Evaluate(
            Pressure.FromMegapascals(megapascals),
            Pressure.FromMegapascals(0.2),
            Pressure.FromMegapascals(20),
            WrittenLimit.Parse(factor, "")
        );
}
