using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.TestSafety;

namespace WeldTrace.Engineering.Tests.TestSafety;

/// <summary>Tier limits of ASME PCC-2 as read: 135.5 and 271 MJ (2008); 8.13, 27.1 and 81.3 MJ (copy of 2022).</summary>
public sealed class StandOffTests
{
    [Theory]
    [InlineData(8.13, 30)]
    [InlineData(8.14, 60)]
    [InlineData(27.1, 60)]
    [InlineData(27.2, 120)]
    [InlineData(81.4, 240)]
    public void Compute_Of2022_TakesTheFragmentTable(double megajoules, double metres) =>
        Assert.Equal(metres, Of(megajoules, StandOffRule.Pcc2Of2022).Fragments!.Value.Metres);

    [Theory]
    [InlineData(10, 30)]
    [InlineData(135.5, 63.33419583)]
    [InlineData(271, 79.79608651)]
    public void Compute_Of2008_TakesTheLargerOfTierAndDistance(double megajoules, double metres) =>
        Assert.Equal(metres, Of(megajoules, StandOffRule.Pcc2Of2008).Least.Metres, 1e-6);

    [Theory]
    [InlineData(5, 30)]
    [InlineData(10, 60)]
    [InlineData(2000, 240)]
    public void Compute_Of2022_KeepsTheLargerOfBlastAndFragments(double megajoules, double least)
    {
        var result = Of(megajoules, StandOffRule.Pcc2Of2022);
        Assert.Equal(Math.Max(least, result.Blast.Metres), result.Least.Metres);
        Assert.True(result.Least >= result.Blast);
    }

    [Fact]
    public void Compute_Of2008Above271_AsksToDivide()
    {
        Assert.True(Of(272, StandOffRule.Pcc2Of2008).MustBeDivided);
        Assert.False(Of(271, StandOffRule.Pcc2Of2008).MustBeDivided);
    }

    [Fact]
    public void Compute_NoEnergy_Refuses() =>
        Assert.True(StandOff.Compute(Energy.Zero, StandOffRule.Pcc2Of2008).IsRefused);

    [Fact]
    public void GasEnergy_VacuumInside_Refuses() =>
        Assert.Equal(
            "absolute pressure",
            Assert
                .Single(
                    GasEnergy
                        .Compute(
                            new(Pressure.FromBar(0.5), Pressure.FromBar(1), Volume.FromLitres(1))
                        )
                        .Refusals
                )
                .Where
        );

    [Theory]
    [InlineData(199, true)]
    [InlineData(301, false)]
    public void GasEnergy_HighPressure_SaysThatTheGasIsNotIdeal(double bar, bool isWithin) =>
        Assert.Equal(
            isWithin,
            GasEnergy
                .Compute(new(Pressure.FromBar(bar), Pressure.FromBar(1), Volume.FromLitres(1)))
                .Working.Validity.IsWithin
        );

    private static StandOff Of(double megajoules, StandOffRule rule) =>
        StandOff.Compute(Energy.FromKilojoules(megajoules * 1000), rule).Value;
}
