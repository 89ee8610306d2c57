using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Engineering.Tests.Conformity;

/// <summary>
/// JCGM 100:2008 (GUM) 7.2.6: an uncertainty is given to two significant digits at most, and the estimate rounded to be
/// consistent with it; its example is 10.05762 Ω with 27 mΩ, written as 10.058 Ω.
/// </summary>
public sealed class MeasuredTextTests
{
    [Theory]
    [InlineData(10.05762, 0.027, "10.058 ± 0.027 mm")]
    [InlineData(0.000353209, 0.00052, "0.00035 ± 0.00052 mm")]
    [InlineData(0.04, 0.5, "0.0 ± 0.5 mm")]
    [InlineData(0.001, 0.52, "0.00 ± 0.52 mm")]
    [InlineData(1234.56, 210, "1230 ± 210 mm")]
    [InlineData(9.996, 0.12, "10.00 ± 0.12 mm")]
    [InlineData(0, 0.1, "0.0 ± 0.1 mm")]
    [InlineData(0.18, 0.04, "0.18 ± 0.04 mm")]
    [InlineData(12.34, 5, "12 ± 5 mm")]
    [InlineData(3.21e-9, 1.4e-10, "3.21 × 10⁻⁹ ± 1.4 × 10⁻¹⁰ mm")]
    [InlineData(2.5, 0, "2.5 mm")]
    public void ToString_RoundsTheValueToThePlaceOfItsUncertainty(
        double value,
        double width,
        string expected
    ) => Assert.Equal(expected, new Measured(value, "mm", width).ToString());

    [Fact]
    public void ToString_WithoutUncertainty_KeepsSixDigits() =>
        Assert.Equal("0.000353209 mm", new Measured(0.0003532094, "mm").ToString());
}
