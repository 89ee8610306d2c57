using CsCheck;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.LeakTesting;

/// <summary>Worked by hand from q = q_cal·(S − S_b)/(S_cal − S_b)/c, the comparison with a calibrated leak.</summary>
public sealed class TracerGasTests
{
    private static readonly WrittenLimit Limit = WrittenLimit.Exact(1e-6, "Pa·m³/s");

    /// <summary>(60 − 10)/(110 − 10) of 1E-6 is 5E-7; with half the gas a tracer, the whole leak is twice that.</summary>
    [Theory]
    [InlineData(1, 5e-7)]
    [InlineData(0.5, 1e-6)]
    public void Rate_FollowsFromTheSignals(double concentration, double expected) =>
        Assert.Equal(expected, Evaluate(60, 1, concentration).Rate.SiValue, expected * 1e-12);

    /// <summary>
    /// S = S_b + (S_cal − S_b): the uncertainty of S_cal counts as much as that of S, that of the background not at all. With u = 1, span 100:
    /// u_q = 1E-6·√2/100, U = 2·u_q. At zero leak u0 = 1E-6·√2/100 and the detection limit is 3.29·u0.
    /// </summary>
    [Fact]
    public void Uncertainty_MatchesTheHandWorkedCase()
    {
        Assert.Equal(2e-8 * Math.Sqrt(2), Evaluate(110, 1, 1).ExpandedUncertainty.SiValue, 1e-20);
        Assert.Equal(3.29e-8 * Math.Sqrt(2), Evaluate(10, 1, 1).DetectionLimit.SiValue, 1e-20);
    }

    [Fact]
    public void Pass_OfABlindTest_IsUndecided()
    {
        var blind = Evaluate(10, 14, 0.5);

        Assert.Equal(Verdict.Undecided, blind.Judgement!.Verdict);
        Assert.Contains("would only have seen", blind.Judgement.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void CalibratedLeak_ThatDoesNotStandClear_IsRefused()
    {
        var refused = TracerGasTest.Evaluate(
            Readings(20, 1, 1) with
            {
                SignalOfCalibratedLeak = 14,
            }
        );

        Assert.Equal("signal of the calibrated leak", Assert.Single(refused.Refusals).Where);
    }

    /// <summary>A greater signal never judges better, and a wider uncertainty never turns a fail or an undecided into a pass.</summary>
    [Fact]
    public void Verdict_IsMonotone() =>
        Gen.Select(Gen.Double[0, 300], Gen.Double[0, 100], Gen.Double[0.01, 15], Gen.Double[0, 4])
            .Sample(
                (signal, more, uncertainty, wider) =>
                {
                    var verdict = Evaluate(signal, uncertainty, 1).Judgement!.Verdict;
                    var greater = Evaluate(signal + more, uncertainty, 1).Judgement!.Verdict;
                    var vaguer = Evaluate(signal, uncertainty + wider, 1).Judgement!.Verdict;
                    Assert.False(
                        verdict != Verdict.Pass && signal >= 10 && greater == Verdict.Pass
                    );
                    Assert.False(
                        verdict == Verdict.Fail && greater != Verdict.Fail && signal >= 110
                    );
                    Assert.False(verdict != Verdict.Pass && vaguer == Verdict.Pass);
                }
            );

    private static TracerGasTest Evaluate(
        double signal,
        double uncertainty,
        double concentration
    ) => TracerGasTest.Evaluate(Readings(signal, uncertainty, concentration), Limit).Value;

    private static TracerReadings Readings(
        double signal,
        double uncertainty,
        double concentration
    ) =>
        new()
        {
            CalibratedLeak = LeakRate.FromSi(1e-6),
            CalibratedLeakUncertainty = LeakRate.Zero,
            SignalOfCalibratedLeak = 110,
            Background = 10,
            SignalOfVessel = signal,
            SignalUncertainty = uncertainty,
            Concentration = concentration,
        };
}
