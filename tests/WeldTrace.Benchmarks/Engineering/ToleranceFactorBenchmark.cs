using BenchmarkDotNet.Attributes;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Benchmarks.Engineering;

/// <summary>The exact one-sided tolerance factor of a sample. Limit: less than 50 µs each after warm-up.</summary>
public class ToleranceFactorBenchmark
{
    [Params(6, 30, 200)]
    public int Count { get; set; }

    [Benchmark]
    public double OneSided() => ToleranceFactor.OneSided(Count, 0.90, 0.95);
}
