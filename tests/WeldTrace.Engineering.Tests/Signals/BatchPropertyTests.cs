using CsCheck;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.Engineering.Tests.Signals;

/// <summary>Samples taken in batches give exactly what they give one by one, wherever the batches are cut.</summary>
public sealed class BatchPropertyTests
{
    private const double Period = 0.1;

    // Few levels, held for a while: stretches, gaps and values on the limits all occur.
    private static readonly Gen<double[]> Values = Held(OneOf(1.0, 1.5, 2.0, 0.999, 2.001, 5.0));

    private static readonly Gen<double[]> Forces = Held(OneOf(0.0, 499, 500, 9_000));
    private static readonly Gen<double[]> Depths = Held(
        OneOf(-0.001, 0.0, 0.0044, 0.0045, double.NaN)
    );
    private static readonly Gen<double[]> Speeds = Held(
        OneOf(0, 7, 8, 100, 189, 190, 200, double.NaN)
    );

    [Fact]
    public void Excursions_AnyCut_AreThoseOfTheSamplesOneByOne() =>
        Gen.Select(Values, Gen.Int[1, 40])
            .Sample(
                (values, batch) =>
                {
                    var (single, batched) = (Detector(), Detector());
                    double[] seconds = [.. values.Select((_, i) => i * Period)];
                    double[] metres = [.. values.Select((_, i) => i * 0.25)];
                    for (var i = 0; i < values.Length; i++)
                    {
                        single.Add(seconds[i], values[i], metres[i]);
                    }

                    foreach (var cut in Cuts(values.Length, batch))
                    {
                        batched.Add(seconds.AsSpan(cut), values.AsSpan(cut), metres.AsSpan(cut));
                    }

                    Assert.Equal(single.Complete(), batched.Complete());
                    Assert.Equal(
                        (single.SampleCount, single.SamplesOutside, single.RawStretches),
                        (batched.SampleCount, batched.SamplesOutside, batched.RawStretches)
                    );
                }
            );

    [Fact]
    public void Phases_AnyCut_AreThoseOfTheSamplesOneByOne() =>
        Gen.Select(Forces, Depths, Speeds, Gen.Int[1, 40], Gen.Bool)
            .Sample(
                (forces, depths, speeds, batch, hasSteadySpeed) =>
                {
                    var count = Math.Min(forces.Length, Math.Min(depths.Length, speeds.Length));
                    double[] seconds = [.. Enumerable.Range(0, count).Select(i => i * Period)];
                    var perMinute = Speed.FromMillimetresPerMinute(1).MetresPerSecond;
                    double[] travel = [.. speeds.Select(speed => speed * perMinute)];
                    var (single, batched) = (Phases(hasSteadySpeed), Phases(hasSteadySpeed));
                    for (var i = 0; i < count; i++)
                    {
                        single.Add(new ToolSample(seconds[i], forces[i], depths[i], travel[i]));
                    }

                    foreach (var cut in Cuts(count, batch))
                    {
                        batched.Add(
                            new ToolSamples(
                                seconds.AsSpan(cut),
                                forces.AsSpan(cut),
                                depths.AsSpan(cut),
                                travel.AsSpan(cut)
                            )
                        );
                    }

                    var (expected, found) = (single.Complete(), batched.Complete());
                    Assert.Equal(expected.Passes, found.Passes);
                    Assert.Equal(expected.Spans, found.Spans);
                }
            );

    [Fact]
    public void ToolSamples_ChannelsNotEquallyLong_Throws() =>
        Assert.Throws<ArgumentException>(() => _ = new ToolSamples([0, 1], [1], [1, 1], [1, 1]));

    private static Gen<double> OneOf(params double[] levels) =>
        Gen.Int[0, levels.Length - 1].Select(index => levels[index]);

    private static Gen<double[]> Held(Gen<double> level) =>
        Gen.Select(level, Gen.Int[1, 30])
            .Array[1, 12]
            .Select(steps =>
                steps.SelectMany(step => Enumerable.Repeat(step.Item1, step.Item2)).ToArray()
            );

    private static IEnumerable<Range> Cuts(int count, int batch) =>
        Enumerable
            .Range(0, ((count - 1) / batch) + 1)
            .Select(part => (part * batch)..Math.Min((part + 1) * batch, count));

    private static ExcursionDetector Detector() =>
        new(1, 2, new ExcursionRule(TimeSpan.FromSeconds(Period)));

    private static PhaseSegmentation Phases(bool hasSteadySpeed) =>
        new(
            new PhaseThresholds
            {
                SteadySpeed = hasSteadySpeed ? Speed.FromMillimetresPerMinute(190) : null,
            }
        );
}
