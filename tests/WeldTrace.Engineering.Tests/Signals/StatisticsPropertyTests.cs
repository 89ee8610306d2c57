using CsCheck;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.Engineering.Tests.Signals;

public sealed class StatisticsPropertyTests
{
    private static readonly Gen<int[]> Codes = Gen.Int[-500, 500].Array[1, 300];

    /// <summary>Against the definitions, on sorted copies.</summary>
    [Fact]
    public void SteadyStatistics_AnySamplesInAnyBatches_AgreeWithTheDefinitions() =>
        Gen.Select(Codes, Gen.Int[0, 300])
            .Sample(
                (codes, cut) =>
                {
                    double[] samples = [.. codes.Select(code => code / 100.0)];
                    var at = Math.Min(cut, samples.Length);
                    var (running, histogram) = (
                        new RunningStatistics(),
                        new CountingHistogram(samples.Min(), 0.01, 1001)
                    );
                    running.Add(samples.AsSpan(0, at));
                    running.Add(samples.AsSpan(at));
                    histogram.Add(samples);
                    var found = SteadyStatistics.From(running, histogram);

                    Assert.Equal(samples.Average(), found.MeanInSampleUnit, 1e-9);
                    Assert.Equal(Deviation(samples), found.StandardDeviationInSampleUnit, 1e-9);
                    Assert.Equal(
                        (samples.Min(), samples.Max()),
                        (found.MinimumInSampleUnit, found.MaximumInSampleUnit)
                    );
                    Assert.Equal(Quantile(samples, 0.01), found.P1InSampleUnit, 1e-9);
                    Assert.Equal(Quantile(samples, 0.5), found.MedianInSampleUnit, 1e-9);
                    Assert.Equal(Quantile(samples, 0.99), found.P99InSampleUnit, 1e-9);
                }
            );

    [Fact]
    public void SelectM4_AnySeries_KeepsEndsAndExtremesInOrder() =>
        Gen.Select(Codes, Gen.Int[1, 40])
            .Sample(
                (codes, stretches) =>
                {
                    double[] values = [.. codes];
                    double[] seconds = [.. Enumerable.Range(0, values.Length).Select(i => i * 0.1)];
                    var room = new int[stretches * MinMaxDecimation.SamplesPerStretch];
                    int[] kept = room[
                        ..MinMaxDecimation.SelectM4(seconds, values, stretches, room)
                    ];

                    Assert.Equal(kept.Order(), kept);
                    Assert.Equal((0, values.Length - 1), (kept[0], kept[^1]));
                    Assert.Equal(values.Min(), kept.Min(index => values[index]));
                    Assert.Equal(values.Max(), kept.Max(index => values[index]));
                }
            );

    private static double Deviation(double[] samples)
    {
        var mean = samples.Average();
        return samples.Length < 2
            ? 0
            : Math.Sqrt(samples.Sum(x => (x - mean) * (x - mean)) / (samples.Length - 1));
    }

    private static double Quantile(double[] samples, double probability)
    {
        double[] sorted = [.. samples.Order()];
        var rank = probability * (sorted.Length - 1);
        var below = (int)rank;
        var above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((rank - below) * (sorted[above] - sorted[below]));
    }
}
