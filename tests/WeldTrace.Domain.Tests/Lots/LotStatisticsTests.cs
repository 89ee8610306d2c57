using WeldTrace.Domain.Lots;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using Xunit;

namespace WeldTrace.Domain.Tests.Lots;

/// <summary>What is stated of a lot. Operating pressure 12 bar, so 30 bar is the least burst.</summary>
public sealed class LotStatisticsTests
{
    private static readonly Pressure Meop = Pressure.FromBar(12);

    [Fact]
    public void Burst_None_SaysSo()
    {
        var (statement, workings) = Of(new LotShop(vessels: 6, bursts: 1).Sampled());

        Assert.Null(statement.BurstBound);
        Assert.Empty(workings);
        Assert.Contains("nothing is stated", Text(statement), StringComparison.Ordinal);
    }

    [Fact]
    public void Burst_One_GivesNoBound()
    {
        var (statement, workings) = Of(Burst(31));

        Assert.Null(statement.BurstBound);
        Assert.Empty(workings);
        Assert.Contains(
            "1 of 1 samples reached the 30 bar",
            Text(statement),
            StringComparison.Ordinal
        );
        Assert.Contains("no bound", Text(statement), StringComparison.Ordinal);
    }

    /// <summary>Factors for 90 % at 95 % of CMH-17-1G, B-basis: n = 2: 20.581, n = 3: 6.157 (as quoted), n = 5: 3.408.</summary>
    [Theory]
    [InlineData(new double[] { 40, 41 }, 20.581)]
    [InlineData(new double[] { 40, 41, 42 }, 6.157)]
    [InlineData(new double[] { 40, 41, 42, 43, 44 }, 3.408)]
    public void Burst_Several_GiveMeanLessFactorTimesDeviation(double[] bars, double factor)
    {
        var (statement, workings) = Of(Burst(bars));
        var mean = bars.Average();
        var deviation = Math.Sqrt(bars.Sum(b => (b - mean) * (b - mean)) / (bars.Length - 1));

        Assert.Equal(mean - (factor * deviation), statement.BurstBound!.Value.Bar, 0.005);
        Assert.Equal(bars, statement.Bursts.Select(b => Math.Round(b.Bar, 9)));
        Assert.NotEmpty(workings);
    }

    [Fact]
    public void Burst_Two_SaysThatItIsAFormality()
    {
        var (statement, _) = Of(Burst(40, 44));

        Assert.True(statement.BurstBound < Pressure.Zero);
        Assert.Contains("next to nothing", Text(statement), StringComparison.Ordinal);
        Assert.Contains("not shown", Text(statement), StringComparison.Ordinal);
    }

    /// <summary>22 without failure show 87.3 % at 95 %, and 59 show 95.05 %: success run, (1 − C)^(1/n).</summary>
    [Theory]
    [InlineData(22, 0.8727)]
    [InlineData(59, 0.9505)]
    public void Proof_WithoutFailure_IsASuccessRun(int passed, double reliability)
    {
        var (statement, workings) = Of(new LotShop().Sampled(), passed);

        Assert.Equal(reliability, statement.ProofReliability!.Value, 0.0001);
        Assert.Single(workings);
    }

    [Fact]
    public void Proof_WithAFailure_IsNoSuccessRun()
    {
        var (statement, _) = Of(new LotShop().Sampled(), 20, 1);

        Assert.Null(statement.ProofReliability);
        Assert.Contains("1 of 21 vessels did not pass", Text(statement), StringComparison.Ordinal);
    }

    private static ProductionLot Burst(params double[] bars)
    {
        var shop = new LotShop(vessels: bars.Length + 3, bursts: bars.Length);
        var lot = shop.Sampled();
        foreach (var (sample, bar) in lot.Samples.Where(s => s.Kind == SampleKind.Burst).Zip(bars))
        {
            shop.Take(lot, sample, Verdict.Pass, bar);
        }

        return lot;
    }

    private static (LotStatement Statement, IReadOnlyList<Engineering.Working> Workings) Of(
        ProductionLot lot,
        int passed = 0,
        int failed = 0
    ) => LotStatistics.State(lot, Meop, passed, failed);

    private static string Text(LotStatement statement) => string.Join(' ', statement.Sentences);
}
