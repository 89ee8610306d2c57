using CsCheck;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Engineering.Tests.Statistics;

public sealed class StatisticsPropertyTests
{
    [Fact]
    public void ToleranceFactor_MoreConfidenceOrFewerValues_IsLarger() =>
        Gen.Select(Gen.Int[3, 60], Gen.Double[0.6, 0.98], Gen.Double[0.5, 0.95])
            .Sample(
                (count, content, confidence) =>
                {
                    var factor = ToleranceFactor.OneSided(count, content, confidence);
                    Assert.True(
                        ToleranceFactor.OneSided(count, content, confidence + 0.02) > factor
                    );
                    Assert.True(
                        ToleranceFactor.OneSided(count, content + 0.01, confidence) > factor
                    );
                    Assert.True(
                        ToleranceFactor.OneSided(count - 1, content, 0.95)
                            > ToleranceFactor.OneSided(count, content, 0.95)
                    );
                },
                iter: 30
            );

    [Fact]
    public void Sample_ShiftedByALargeConstant_KeepsItsDeviation() =>
        Gen.Select(Gen.Double[-1, 1].Array[3, 50], Gen.Double[-1e6, 1e6])
            .Sample(
                (values, shift) =>
                {
                    var here = Sample.Of(values);
                    var there = Sample.Of([.. values.Select(value => value + shift)]);
                    Assert.Equal(here.StandardDeviation, there.StandardDeviation, 1e-8);
                    Assert.Equal(here.Mean + shift, there.Mean, 1e-8);
                }
            );

    [Fact]
    public void SuccessRun_ThereAndBack_ShowsAtLeastTheWantedReliability() =>
        Gen.Select(Gen.Double[0.5, 0.999], Gen.Double[0.5, 0.99])
            .Sample(
                (reliability, confidence) =>
                {
                    var trials = SuccessRun.Trials(reliability, confidence);
                    Assert.True(SuccessRun.Reliability(trials, confidence) >= reliability - 1e-9);
                    Assert.True(
                        trials == 1 || SuccessRun.Reliability(trials - 1, confidence) < reliability
                    );
                }
            );

    [Fact]
    public void Proportion_AllOrNone_ReachesTheEnd()
    {
        Assert.Equal(0, SuccessRun.Proportion(0, 10, 0.95).Lower);
        Assert.Equal(1, SuccessRun.Proportion(10, 10, 0.95).Upper);
    }

    [Fact]
    public void Average_WeightOne_FollowsTheValues() =>
        Gen.Double[-10, 10]
            .Array[1, 20]
            .Sample(values =>
                Assert.Equal(values, new WeightedAverageChart(0, 1, 1).Averages(values))
            );

    [Fact]
    public void Grubbs_PublishedOutlier_IsFound()
    {
        var sample = StatisticsData.Sample("TIETJEN_MOORE");
        var test = Grubbs.Test(sample).Value;
        Assert.True(test.IsOutlier);
        Assert.Equal(sample.Values.Max(), sample.Values[test.Index]);
        Assert.False(Grubbs.Test(Sample.Of([1, 2, 3, 4, 5, 6, 7])).Value.IsOutlier);
    }

    [Fact]
    public void CumulativeSums_MirroredValues_SwapUpperAndLower() =>
        Gen.Double[-5, 5]
            .Array[1, 30]
            .Sample(values =>
            {
                var chart = new CumulativeSumChart(0, 0.5, 4);
                var sums = chart.Sums(values);
                var mirrored = chart.Sums([.. values.Select(value => -value)]);
                Assert.Equal(sums.Select(sum => sum.Upper), mirrored.Select(sum => sum.Lower));
                Assert.Equal(
                    sums.Select(sum => sum.IsSignal),
                    mirrored.Select(sum => sum.IsSignal)
                );
                Assert.All(
                    sums,
                    sum => Assert.Equal(Math.Max(sum.Upper, sum.Lower) > 4, sum.IsSignal)
                );
            });

    [Theory]
    [InlineData(0.9, true)]
    [InlineData(1, false)]
    [InlineData(3, false)]
    [InlineData(3.1, true)]
    public void ControlLimits_ValueBeyond_IsASignal(double value, bool isSignal) =>
        Assert.Equal(isSignal, new ControlLimits(1, 2, 3).IsSignal(value));

    [Fact]
    public void Grubbs_ThreeEqualValues_Refuses() =>
        Assert.True(Grubbs.Test(Sample.Of([1, 1, 1])).IsRefused);

    [Fact]
    public void Charts_TooFewOrUneven_Refuse()
    {
        Assert.Equal(
            RefusalReason.TooFewData,
            Assert.Single(IndividualsChart.Compute([1, 2]).Refusals).Reason
        );
        Assert.Equal(
            RefusalReason.OutOfRange,
            Assert
                .Single(
                    MeanRangeChart
                        .Compute([
                            [1, 2],
                            [1, 2, 3],
                        ])
                        .Refusals
                )
                .Reason
        );
    }

    [Fact]
    public void Charts_FewValues_AreTrialLimits() =>
        Assert.False(IndividualsChart.Compute([1, 2, 3, 2]).Working.Validity.IsWithin);

    [Fact]
    public void ToleranceFactor_OneValue_Refuses() =>
        Assert.True(ToleranceFactor.TryOneSided(1, 0.9, 0.95).IsRefused);

    [Fact]
    public void WeibullBasis_NegativeValue_Refuses() =>
        Assert.True(BasisValue.Weibull(Sample.Of([-1, 2, 3]), Basis.B).IsRefused);

    [Fact]
    public void Sample_OneValue_Throws() => Assert.Throws<ArgumentException>(() => Sample.Of([1]));
}
