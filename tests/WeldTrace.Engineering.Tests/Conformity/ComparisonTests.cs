using CsCheck;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Engineering.Tests.Conformity;

/// <summary>Rounding rule of ISO 80000-1 (from memory) and guarded acceptance (common practice).</summary>
public sealed class ComparisonTests
{
    [Theory]
    [InlineData(0.54, "0.5", Verdict.Pass)]
    [InlineData(0.55, "0.5", Verdict.Fail)]
    [InlineData(0.54, "0.50", Verdict.Fail)]
    [InlineData(0.504, "0.50", Verdict.Pass)]
    [InlineData(0.505, "0.50", Verdict.Pass)]
    [InlineData(0.515, "0.51", Verdict.Fail)]
    [InlineData(2.5, "2", Verdict.Pass)]
    [InlineData(3.5, "3", Verdict.Fail)]
    public void AtMost_WithoutUncertainty_RoundsToTheWrittenDecimals(
        double value,
        string limit,
        Verdict verdict
    ) =>
        Assert.Equal(
            verdict,
            Comparison.AtMost(new(value, "mm"), WrittenLimit.Parse(limit, "mm")).Verdict
        );

    [Theory]
    [InlineData(0.1 + 0.2, "0.3", Verdict.Pass)]
    [InlineData(0.2951, "0.3", Verdict.Pass)]
    [InlineData(0.2499, "0.3", Verdict.Fail)]
    public void AtLeast_WithoutUncertainty_RoundsToTheWrittenDecimals(
        double value,
        string limit,
        Verdict verdict
    ) =>
        Assert.Equal(
            verdict,
            Comparison.AtLeast(new(value, "mm"), WrittenLimit.Parse(limit, "mm")).Verdict
        );

    [Theory]
    [InlineData(8, 1, Verdict.Pass)]
    [InlineData(9.5, 1, Verdict.Undecided)]
    [InlineData(10.8, 1, Verdict.Undecided)]
    [InlineData(11.2, 1, Verdict.Fail)]
    public void AtMost_WithUncertainty_IsDecidedByBothEnds(
        double value,
        double uncertainty,
        Verdict verdict
    ) =>
        Assert.Equal(
            verdict,
            Comparison
                .AtMost(new(value, "bar", uncertainty), WrittenLimit.Parse("10.0", "bar"))
                .Verdict
        );

    [Fact]
    public void Within_IntervalBeyondBothLimits_IsUndecided()
    {
        var judgement = Comparison.Within(
            new(5, "mm", 10),
            WrittenLimit.Parse("4", "mm"),
            WrittenLimit.Parse("6", "mm")
        );
        Assert.Equal(Verdict.Undecided, judgement.Verdict);
    }

    [Fact]
    public void AtMost_OtherUnitOfTheSameKind_IsConverted()
    {
        var judgement = Comparison.AtMost(new(1.0, "psi", 0.1), WrittenLimit.Parse("70", "mbar"));
        Assert.Equal(Verdict.Undecided, judgement.Verdict);
        Assert.Equal(68.947572931683613, judgement.Measured.Value, 1e-10);
        Assert.Equal(6.8947572931683613, judgement.Measured.ExpandedUncertainty!.Value, 1e-10);
        Assert.Equal(69, judgement.Rounded);
    }

    [Fact]
    public void AtMost_OtherKind_Throws() =>
        Assert.Throws<ArgumentException>(() =>
            Comparison.AtMost(new(1, "mm"), WrittenLimit.Parse("1", "bar"))
        );

    [Fact]
    public void AtMost_WiderUncertainty_NeverTurnsIntoPass() =>
        Gen.Select(Gen.Double[-20, 20], Gen.Double[0, 10], Gen.Double[0, 10])
            .Sample(
                (value, narrow, more) =>
                {
                    var limit = WrittenLimit.Parse("5.0", "mm");
                    var first = Comparison.AtMost(new(value, "mm", narrow), limit).Verdict;
                    var wider = Comparison.AtMost(new(value, "mm", narrow + more), limit).Verdict;
                    Assert.True(wider == first || wider == Verdict.Undecided);
                }
            );

    [Fact]
    public void Within_WiderUncertainty_NeverTurnsIntoPass() =>
        Gen.Select(Gen.Double[-20, 20], Gen.Double[0, 10], Gen.Double[0, 10])
            .Sample(
                (value, narrow, more) =>
                {
                    var (low, high) = (
                        WrittenLimit.Parse("2.0", "mm"),
                        WrittenLimit.Parse("6.0", "mm")
                    );
                    var first = Comparison.Within(new(value, "mm", narrow), low, high).Verdict;
                    var wider = Comparison
                        .Within(new(value, "mm", narrow + more), low, high)
                        .Verdict;
                    Assert.True(wider == first || wider == Verdict.Undecided);
                }
            );

    [Fact]
    public void NotBelowZero_NegativeLoss_CountsAsUncertainty()
    {
        var loss = new Measured(-0.4, "bar", 0.1).NotBelowZero();
        Assert.Equal(0, loss.Value);
        Assert.Equal(0.4, loss.ExpandedUncertainty);
    }

    [Theory]
    [InlineData(double.NaN, null)]
    [InlineData(1, -0.1)]
    [InlineData(1, double.PositiveInfinity)]
    public void Measured_ImpossibleNumber_Throws(double value, double? uncertainty) =>
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => new Measured(value, "mm", uncertainty));

    [Fact]
    public void Worst_OfSeveral_FailBeforeUndecidedBeforePass()
    {
        Assert.Equal(Verdict.Fail, Verdicts.Worst([Verdict.Pass, Verdict.Undecided, Verdict.Fail]));
        Assert.Equal(Verdict.Undecided, Verdicts.Worst([Verdict.Pass, Verdict.Undecided]));
        Assert.Equal(Verdict.Pass, Verdicts.Worst([Verdict.Pass]));
        Assert.Equal(Verdict.Undecided, Verdicts.Worst([]));
    }
}
