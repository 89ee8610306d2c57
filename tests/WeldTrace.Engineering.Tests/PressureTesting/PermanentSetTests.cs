using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.PressureTesting;

/// <summary>
/// No published case: differences, and U = 2·√(u² + u²) by the law of propagation and the coverage factor of JCGM 100:2008 5.1.2 and
/// 6.2.1 (from memory), worked by hand; u = 0.005 mm gives U = 0.01414 mm.
/// </summary>
public sealed class PermanentSetTests
{
    [Theory]
    [InlineData(163.02, "0.10", "mm", Verdict.Pass)]
    [InlineData(163.10, "0.10", "mm", Verdict.Undecided)]
    [InlineData(163.15, "0.10", "mm", Verdict.Fail)]
    [InlineData(162.85, "0.10", "mm", Verdict.Fail)]
    [InlineData(163.10, "0.1", "%", Verdict.Pass)]
    [InlineData(163.40, "0.1", "%", Verdict.Fail)]
    public void Evaluate_AgainstAllowedSet_GivesTheVerdict(
        double after,
        string allowed,
        string unit,
        Verdict verdict
    )
    {
        var set = PermanentSet.Evaluate(Measure(after, WrittenLimit.Parse(allowed, unit))).Value;
        Assert.Equal(verdict, set.Judgement.Verdict);
        Assert.Equal(after - 163, set.Set.Millimetres, 1e-9);
        Assert.Equal(0.0141421356, set.ExpandedUncertainty.Millimetres, 1e-9);
        Assert.Equal((after - 163) / 1.63, set.RelativePercent, 1e-9);
    }

    [Fact]
    public void Evaluate_AllowedSetInBar_Refuses() =>
        Assert.Equal(
            "allowed set",
            Assert
                .Single(
                    PermanentSet.Evaluate(Measure(163, WrittenLimit.Parse("1", "bar"))).Refusals
                )
                .Where
        );

    private static SetMeasurement Measure(double after, WrittenLimit allowed) =>
        new(
            "outer diameter",
            Length.FromMillimetres(163),
            Length.FromMillimetres(after),
            Length.FromMillimetres(0.005),
            allowed
        );
}
