using CsCheck;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.PressureTesting;

/// <summary>Gas law by hand: 300 bar absolute at 293.15 K fall by 1.0233 bar when the gas cools by 1 K.</summary>
public sealed class HoldEvaluationTests
{
    [Fact]
    public void Evaluate_GasCooled_CompensatesTheDrop()
    {
        var cooled = 300 * 292.15 / 293.15;
        var hold = HoldEvaluation.Evaluate(Hold(cooled, 292.15)).Value;
        Assert.Equal(1.0233668771, hold.MeasuredDrop.Bar, 1e-8);
        Assert.Equal(0, hold.CompensatedDrop.Bar, 1e-9);
        Assert.Equal(Verdict.Pass, hold.Judgement.Verdict);
    }

    [Theory]
    [InlineData(300, Verdict.Pass)]
    [InlineData(299.2, Verdict.Undecided)]
    [InlineData(298, Verdict.Fail)]
    [InlineData(302, Verdict.Undecided)]
    public void Evaluate_GasAtSteadyTemperature_GivesTheVerdict(double lastBar, Verdict verdict) =>
        Assert.Equal(
            verdict,
            HoldEvaluation.Evaluate(Hold(lastBar, 293.15)).Value.Judgement.Verdict
        );

    [Fact]
    public void Evaluate_HeldTooShort_IsNoPass()
    {
        var hold = HoldEvaluation
            .Evaluate(Hold(300, 293.15) with { RequiredHold = TimeSpan.FromMinutes(31) })
            .Value;
        Assert.Equal(Verdict.Undecided, hold.Judgement.Verdict);
        Assert.Contains("less than the 31 min", hold.Judgement.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Evaluate_Liquid_ComparesAsReadAndSaysSo()
    {
        var hold = HoldEvaluation
            .Evaluate(Hold(299.6, 292.15) with { Medium = TestMedium.Liquid })
            .Value;
        Assert.Equal(0.4, hold.CompensatedDrop.Bar, 1e-9);
        Assert.False(hold.Working.Validity.IsWithin);
    }

    [Fact]
    public void Evaluate_LiquidWithSensitivity_Compensates()
    {
        var hold = HoldEvaluation
            .Evaluate(
                Hold(296, 292.15) with
                {
                    Medium = TestMedium.Liquid,
                    LiquidPressurePerKelvin = Pressure.FromBar(4),
                }
            )
            .Value;
        Assert.Equal(0, hold.CompensatedDrop.Bar, 1e-9);
        Assert.Equal(
            2 * Math.Sqrt(2 * ((0.05 * 0.05) + Math.Pow(4 * 0.1, 2))),
            hold.ExpandedUncertainty.Bar,
            1e-9
        );
    }

    [Fact]
    public void Evaluate_WiderUncertainty_NeverTurnsIntoPass() =>
        Gen.Select(Gen.Double[297, 302], Gen.Double[0.001, 1], Gen.Double[0, 1])
            .Sample(
                (bar, narrow, more) =>
                {
                    var first = VerdictOf(bar, narrow);
                    var wider = VerdictOf(bar, narrow + more);
                    Assert.True(wider == first || wider == Verdict.Undecided);
                }
            );

    [Fact]
    public void Evaluate_OneReading_Refuses()
    {
        var hold = Hold(300, 293.15);
        var result = HoldEvaluation.Evaluate(hold with { Readings = [hold.Readings[0]] });
        Assert.Equal(RefusalReason.TooFewData, Assert.Single(result.Refusals).Reason);
    }

    [Fact]
    public void Evaluate_AllowedDropInMillimetres_Refuses() =>
        Assert.Equal(
            "allowed drop",
            Assert
                .Single(
                    HoldEvaluation
                        .Evaluate(
                            Hold(300, 293.15) with
                            {
                                AllowedDrop = WrittenLimit.Parse("1", "mm"),
                            }
                        )
                        .Refusals
                )
                .Where
        );

    private static Verdict VerdictOf(double bar, double uncertainty) =>
        HoldEvaluation
            .Evaluate(
                Hold(bar, 293.15) with
                {
                    PressureUncertainty = Pressure.FromBar(uncertainty),
                }
            )
            .Value.Judgement.Verdict;

    private static HoldTest Hold(double lastBar, double lastKelvin) =>
        new()
        {
            Medium = TestMedium.Gas,
            Readings = [Reading(0, 300, 293.15), Reading(30, lastBar, lastKelvin)],
            PressureUncertainty = Pressure.FromBar(0.05),
            TemperatureUncertaintyKelvin = 0.1,
            AllowedDrop = WrittenLimit.Parse("1.0", "bar"),
            RequiredHold = TimeSpan.FromMinutes(30),
        };

    private static HoldReading Reading(double minutes, double bar, double kelvin) =>
        new(TimeSpan.FromMinutes(minutes), Pressure.FromBar(bar), Temperature.FromKelvin(kelvin));
}
