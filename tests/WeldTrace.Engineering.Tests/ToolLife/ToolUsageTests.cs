using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Engineering.Tests.ToolLife;

/// <summary>Sums worked by hand. That a tool's life is counted in metres of weld is common practice, no source.</summary>
public sealed class ToolUsageTests
{
    [Theory]
    [InlineData(0.5, 5.5, 11)]
    [InlineData(5.6, 0.4, 0)]
    [InlineData(7, -1, 0)]
    public void Compute_Runs_GivesMetresAndPassesLeft(double used, double left, int passes)
    {
        var usage = ToolUsage
            .Compute([Length.FromMetres(used)], Length.FromMetres(6), Length.FromMetres(0.5))
            .Value;
        Assert.Equal(left, usage.Left.Metres, 1e-12);
        Assert.Equal(passes, usage.PassesLeft);
    }

    [Fact]
    public void Compute_NegativeRun_Refuses()
    {
        var result = ToolUsage.Compute(
            [Length.FromMetres(1), Length.FromMetres(-1)],
            Length.FromMetres(6),
            Length.Zero
        );
        Assert.Equal(2, result.Refusals.Count);
    }
}
