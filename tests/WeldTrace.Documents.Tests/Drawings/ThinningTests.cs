using WeldTrace.Documents.Drawings;
using Xunit;

namespace WeldTrace.Documents.Tests.Drawings;

public sealed class ThinningTests
{
    [Fact]
    public void MinMax_LongChannel_KeepsTheExtremes()
    {
        var noise = new Random(7);
        var times = Enumerable.Range(0, 240_000).Select(i => i / 100.0).ToArray();
        var values = times.Select(_ => noise.NextDouble()).ToArray();
        values[123_456] = 9;
        values[200_001] = -9;

        var run = Assert.Single(Thinning.MinMax(times, values, 400));

        Assert.InRange(run.Count, 400, 804);
        Assert.Contains((times[123_456], 9), run);
        Assert.Contains((times[200_001], -9), run);
        Assert.Equal(run.OrderBy(sample => sample.Time), run);
    }

    [Fact]
    public void MinMax_FewerSamplesThanBins_KeepsAll()
    {
        double[] times = [0, 1, 2, 3];
        double[] values = [5, 4, 6, 5];

        Assert.Equal(times.Zip(values), Assert.Single(Thinning.MinMax(times, values, 100)));
    }

    [Fact]
    public void MinMax_MissingSamples_PartTheLine()
    {
        double[] times = [0, 1, 2, 3, 4];
        double[] values = [1, 2, double.NaN, 4, 5];

        Assert.Equal(2, Thinning.MinMax(times, values, 10).Count);
    }

    [Fact]
    public void MinMax_NothingToDraw_IsEmpty()
    {
        Assert.Empty(Thinning.MinMax([], [], 10));
        Assert.Empty(Thinning.MinMax([0, 1], [double.NaN, double.NaN], 10));
        Assert.Single(Thinning.MinMax([3], [1], 10));
    }
}
