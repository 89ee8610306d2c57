using WeldTrace.Engineering.Signals;

namespace WeldTrace.Engineering.Tests.Signals;

/// <summary>Root mean square of a sine: a/√2 (definition; any handbook of electrical engineering, from memory).</summary>
public sealed class LowBandTests
{
    [Theory]
    [InlineData(2, 1.41421356, 1)]
    [InlineData(1, 0, 0)]
    [InlineData(10, 1, 0.14142136)]
    public void Compute_IsTheBandOverTheRootMeanSquareOfTheLine(
        double amplitude,
        double band,
        double ratio
    ) => Assert.Equal(ratio, LowBand.Compute(amplitude, band).Value.Ratio, 1e-7);

    [Fact]
    public void Compute_NoLine_Refuses() =>
        Assert.Equal("amplitude", Assert.Single(LowBand.Compute(0, 1).Refusals).Where);
}
