using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Engineering.Tests.Conformity;

/// <summary>Rounding to the digits of the limit follows ISO 80000-1 (from memory); its worked values are in ComparisonTests.</summary>
public sealed class WrittenLimitTests
{
    [Theory]
    [InlineData("0.50", "mm", 2, "0.50 mm")]
    [InlineData("1.0E-3", "Pa m3/s", 4, "0.0010 Pa·m³/s")]
    [InlineData("2", "", 0, "2")]
    public void Parse_WrittenNumber_KeepsItsDecimals(
        string text,
        string unit,
        int decimals,
        string written
    )
    {
        var limit = WrittenLimit.Parse(text, unit);
        Assert.Equal(decimals, limit.Decimals);
        Assert.Equal(written, limit.ToString());
    }

    [Theory]
    [InlineData("half", "mm")]
    [InlineData("0,5", "mm")]
    [InlineData("", "mm")]
    [InlineData(null, "mm")]
    [InlineData("0.5", "furlong")]
    [InlineData("0.5", null)]
    [InlineData("1e300", "mm")]
    public void TryParse_UnusableText_GivesNoLimit(string? text, string? unit) =>
        Assert.False(WrittenLimit.TryParse(text, unit, out _));

    [Fact]
    public void TryParse_GoodText_GivesTheLimit()
    {
        Assert.True(WrittenLimit.TryParse(" 0.5 ", "mm", out var limit));
        Assert.Equal(0.5, limit.Value);
    }

    [Fact]
    public void Round_ExactLimit_LeavesTheValue() =>
        Assert.Equal(0.123456789, WrittenLimit.Exact(0.1, "mm").Round(0.123456789));

    [Fact]
    public void Round_ValueBeyondDecimalNumbers_LeavesTheValue() =>
        Assert.Equal(1e200, WrittenLimit.Parse("0.1", "mm").Round(1e200));
}
