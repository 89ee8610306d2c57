using CsCheck;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.LeakTesting;

namespace WeldTrace.Engineering.Tests.LeakTesting;

/// <summary>Judgements of pressure-decay tests; the figures follow from the formulas checked against f_leak.csv.</summary>
public sealed class PressureDecayTests
{
    private static readonly WrittenLimit OneHundredth = WrittenLimit.Parse("0.010", "Pa m3/s");

    [Theory]
    [InlineData(1101325, 0.0001, Verdict.Pass)]
    [InlineData(1100000, 0.0001, Verdict.Pass)]
    [InlineData(1099300, 0.0001, Verdict.Fail)]
    [InlineData(1099500, 0.0001, Verdict.Undecided)]
    [InlineData(1101834, 0.0001, Verdict.Pass)]
    [InlineData(1102513, 0.0001, Verdict.Undecided)]
    [InlineData(1101325, 0.5, Verdict.Undecided)]
    [InlineData(1104000, 0.0001, Verdict.Undecided)]
    public void Evaluate_AgainstLimit_GivesTheVerdict(
        double lastPressure,
        double kelvin,
        Verdict verdict
    )
    {
        var decay = Evaluate(lastPressure, kelvin, OneHundredth);
        Assert.Equal(verdict, decay.Judgement!.Verdict);
    }

    [Fact]
    public void Evaluate_GasSeemsToGrow_SaysSoInTheWorking()
    {
        var decay = Evaluate(1104000, 0.0001, OneHundredth);
        Assert.True(decay.IsApparentGain);
        Assert.False(decay.Working.Validity.IsWithin);
    }

    [Fact]
    public void Evaluate_BlindTest_SaysWhatItWouldHaveSeen()
    {
        var judgement = Evaluate(1101325, 0.15, OneHundredth).Judgement!;
        Assert.Equal(Verdict.Undecided, judgement.Verdict);
        Assert.StartsWith(
            "The test would only have seen a leak of 0.0155",
            judgement.Sentence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Evaluate_WiderUncertainty_NeverTurnsIntoPass() =>
        Gen.Select(Gen.Double[1098000, 1104000], Gen.Double[0, 0.2], Gen.Double[0, 0.2])
            .Sample(
                (pressure, kelvin, more) =>
                {
                    var first = Evaluate(pressure, kelvin, OneHundredth).Judgement!.Verdict;
                    var wider = Evaluate(pressure, kelvin + more, OneHundredth).Judgement!.Verdict;
                    Assert.True(wider != Verdict.Pass || first == Verdict.Pass);
                }
            );

    [Fact]
    public void Evaluate_ImpossibleReadings_RefusesEach()
    {
        var test = DecayRecords.TwoPoint(0, (10, 1e5, 293), (10, -1, 0)) with
        {
            Limit = WrittenLimit.Parse("1", "bar"),
        };
        Assert.Equal(
            [
                "test volume",
                "pressure of reading 2",
                "temperature of reading 2",
                "time of reading 2",
                "limit",
            ],
            PressureDecay.Evaluate(test).Refusals.Select(refusal => refusal.Where)
        );
    }

    [Fact]
    public void Evaluate_FitThroughTwoPoints_Refuses()
    {
        var test = DecayRecords.TwoPoint(0.01, (0, 1e5, 293), (10, 1e5, 293)) with
        {
            Method = DecayMethod.LeastSquares,
        };
        Assert.Equal(
            RefusalReason.TooFewData,
            Assert.Single(PressureDecay.Evaluate(test).Refusals).Reason
        );
    }

    [Fact]
    public void Evaluate_FitWithoutScatter_KeepsTheUncertaintyOfTheInstruments()
    {
        var test = DecayRecords.TwoPoint(0.01, (0, 1e5, 293), (10, 1e5, 293), (20, 1e5, 293)) with
        {
            Method = DecayMethod.LeastSquares,
        };
        var decay = PressureDecay.Evaluate(test).Value;
        Assert.Equal(0, decay.FitUncertainty!.Value.SiValue, 1e-12);
        Assert.Equal(0.01 * 20 / Math.Sqrt(200), decay.StandardUncertainty.SiValue, 1e-12);
    }

    private static PressureDecay Evaluate(double lastPressure, double kelvin, WrittenLimit limit)
    {
        var test = DecayRecords.TwoPoint(
            0.0106,
            (0, 1101325, 293.15),
            (1800, lastPressure, 293.15)
        ) with
        {
            Uncertainty = DecayRecords.Uncertainty(0, 20, kelvin, 0),
            Limit = limit,
        };
        return PressureDecay.Evaluate(test).Value;
    }
}
