using CsCheck;
using WeldTrace.Engineering.Signals;
using Reference = MathNet.Numerics.Statistics.Statistics;

namespace WeldTrace.Engineering.Tests.Signals;

/// <summary>Compared with MathNet.Numerics: its moving average, and its median of the last samples, both growing from one sample on.</summary>
public sealed class MovingWindowTests
{
    private static readonly Gen<(double[] Samples, int Length)> Series = Gen.Select(
        Gen.Int[-5000, 5000].Select(whole => (double)whole).Array[1, 400],
        Gen.Int[1, 50].Select(half => (2 * half) + 1)
    );

    [Fact]
    public void MovingMean_IsThatOfTheLibrary() =>
        Series.Sample(drawn =>
        {
            var filtered = Filtered(SampleFilterKind.MovingMean, drawn.Length, drawn.Samples);

            var expected = Reference.MovingAverage(drawn.Samples, drawn.Length);
            Assert.All(expected.Zip(filtered), pair => Assert.Equal(pair.First, pair.Second, 1e-6));
        });

    [Fact]
    public void MovingMedian_IsTheMedianOfTheLastSamples() =>
        Series.Sample(drawn =>
        {
            var filtered = Filtered(SampleFilterKind.MovingMedian, drawn.Length, drawn.Samples);

            for (var i = 0; i < filtered.Length; i++)
            {
                var first = Math.Max(0, i - drawn.Length + 1);
                Assert.Equal(Reference.Median(drawn.Samples[first..(i + 1)]), filtered[i], 1e-9);
            }
        });

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(103)]
    public void Length_ThatIsEvenOrOutOfBounds_IsRefused(int samples)
    {
        var filter = new SampleFilter(SampleFilterKind.MovingMedian, samples);

        Assert.False(filter.IsSensible);
        Assert.Throws<ArgumentException>(() => new MovingWindow(filter));
    }

    [Fact]
    public void Clear_BeginsAnew()
    {
        var window = new MovingWindow(new(SampleFilterKind.MovingMedian, 3));
        var filtered = new double[3];
        window.Apply([9, 9, 9], filtered);

        window.Clear();
        window.Apply([1, 2, 3], filtered);

        Assert.Equal([1, 1.5, 2], filtered);
    }

    private static double[] Filtered(SampleFilterKind kind, int length, double[] samples)
    {
        var filtered = new double[samples.Length];
        // In two pieces, as the frames of a log come.
        var half = samples.Length / 2;
        var window = new MovingWindow(new(kind, length));
        window.Apply(samples.AsSpan(0, half), filtered);
        window.Apply(samples.AsSpan(half), filtered.AsSpan(half));
        return filtered;
    }
}
