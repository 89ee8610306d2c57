using BenchmarkDotNet.Attributes;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.ToolLife;

namespace WeldTrace.Benchmarks.Engineering;

/// <summary>A Weibull life fitted to 200 tools, two of five of them censored. Limit: less than 2 ms.</summary>
public class WeibullFitBenchmark
{
    private const int Tools = 200;
    private const double Shape = 3;
    private const double Scale = 800;
    private LifeRecord[] _records = [];

    /// <summary>Quantiles of a known life, of which every fifth and every fifth but one was still in use.</summary>
    [GlobalSetup]
    public void Setup() =>
        _records = [
            .. Enumerable
                .Range(0, Tools)
                .Select(i => new LifeRecord(
                    Length.FromMetres(
                        Scale * Math.Pow(-Math.Log(1 - ((i + 0.5) / Tools)), 1 / Shape)
                    ),
                    i % 5 < 3
                )),
        ];

    [Benchmark]
    public Computed<ToolLifeFit> Fit() => ToolLifeFit.Fit(_records);
}
