using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.Conformity;

/// <summary>A limit in a unit of another kind is refused, with the units that would do.</summary>
public sealed class LimitUnitTests
{
    private static readonly WrittenLimit InBar = WrittenLimit.Parse("1", "bar");

    [Fact]
    public void Bubbles_LimitInBar_Refuse() =>
        AssertRefused(
            BubbleImmersion.Evaluate(
                new(
                    Length.FromMillimetres(2),
                    Length.Zero,
                    0,
                    TimeSpan.FromMinutes(1),
                    Pressure.FromBar(1)
                ),
                InBar
            ),
            "limit"
        );

    [Fact]
    public void BurstRatio_FactorInBar_Refuses() =>
        AssertRefused(
            BurstRatio.Evaluate(
                Pressure.FromBar(40),
                Pressure.FromBar(1),
                Pressure.FromBar(20),
                InBar
            ),
            "required burst factor"
        );

    [Fact]
    public void VolumetricExpansion_LimitInBar_Refuses() =>
        AssertRefused(
            VolumetricExpansion.Evaluate(
                Volume.FromCubicCentimetres(60),
                Volume.FromCubicCentimetres(2),
                0,
                InBar
            ),
            "limit"
        );

    [Fact]
    public void JointEfficiency_LimitInBar_Refuses() =>
        AssertRefused(
            JointEfficiency.Compute(
                [
                    new(
                        Force.FromKilonewtons(20),
                        Length.FromMillimetres(12),
                        Length.FromMillimetres(6)
                    ),
                ],
                Pressure.FromMegapascals(476),
                ParentReference.SamePlate,
                InBar
            ),
            "least efficiency"
        );

    private static void AssertRefused<T>(Computed<T> result, string where)
        where T : notnull
    {
        var refusal = Assert.Single(result.Refusals);
        Assert.Equal(where, refusal.Where);
        Assert.StartsWith("Its unit, bar,", refusal.What, StringComparison.Ordinal);
    }
}
