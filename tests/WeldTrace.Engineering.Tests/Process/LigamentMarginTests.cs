using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Tests.Process;

/// <summary>Hand-worked: the margin is (t − z) − l, by the definition of the ligament.</summary>
public sealed class LigamentMarginTests
{
    [Theory]
    [InlineData(6.0, 5.6, 0.2, 0.2)]
    [InlineData(6.0, 5.9, 0.2, -0.1)]
    [InlineData(6.0, 5.6, null, 0.4)]
    [InlineData(3.0, 3.2, null, -0.2)]
    public void Compute_HandWorked_SubtractsDepthAndLeast(
        double thickness,
        double deepest,
        double? least,
        double expected
    )
    {
        var margin = LigamentMargin.Compute(
            Length.FromMillimetres(thickness),
            Length.FromMillimetres(deepest),
            least is { } l ? Length.FromMillimetres(l) : null
        );

        Assert.Equal(expected, margin.Value.Margin.Millimetres, 1e-9);
        Assert.Equal(expected >= 0, margin.Working.Validity.IsWithin);
    }

    [Fact]
    public void Compute_NoThickness_IsRefused() =>
        Assert.True(LigamentMargin.Compute(Length.Zero, Length.FromMillimetres(5)).IsRefused);
}
