using WeldTrace.Documents.Drawings;
using Xunit;

namespace WeldTrace.Documents.Tests.Drawings;

public sealed class ChartAxisTests
{
    [Theory]
    [InlineData(0, 160, 10, new[] { "0", "20", "40", "60", "80", "100", "120", "140", "160" })]
    [InlineData(-0.1, 0.32, 4, new[] { "0.0", "0.2" })]
    [InlineData(6.8, 8.2, 4, new[] { "7.0", "7.5", "8.0" })]
    public void Ticks_Range_AreRoundNumbers(double from, double to, int most, string[] expected)
    {
        var axis = new ChartAxis(from, to, 0, 100, most);

        Assert.Equal(expected, axis.Ticks().Select(tick => tick.Text));
    }

    [Fact]
    public void At_EndsOfTheRange_AreTheEndsOfTheAxis()
    {
        var axis = new ChartAxis(10, 30, 200, -80, 4);

        Assert.Equal(200, axis.At(10), 9);
        Assert.Equal(120, axis.At(30), 9);
    }

    [Fact]
    public void Ticks_EmptyRange_StillHasOne()
    {
        var axis = new ChartAxis(5, 5, 0, 100, 4);

        Assert.Contains("5.0", axis.Ticks().Select(tick => tick.Text));
        Assert.Equal(50, axis.At(5), 9);
    }
}
