using BenchmarkDotNet.Attributes;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.Benchmarks.Engineering;

/// <summary>
/// A decoded log of 12 columns and 2,400,000 rows, evaluated in one pass: phases from time, force, depth and speed, excursions of the
/// force, statistics of every column. Limit: twice the time of a plain sweep over the same columns, and nothing allocated per sample.
/// </summary>
public class LogSweepBenchmark
{
    private const int Rows = 2_400_000;
    private const int Columns = 12;
    private const int Batch = 1024;
    private const double SamplesPerSecond = 1000;

    private double[][] _columns = [];

    [GlobalSetup]
    public void Setup() =>
        _columns = [
            .. Enumerable
                .Range(0, Columns)
                .Select(column => Enumerable.Range(0, Rows).Select(i => At(column, i)).ToArray()),
        ];

    /// <summary>Every value is read once and added up.</summary>
    [Benchmark(Baseline = true)]
    public double Sweep()
    {
        var sum = 0.0;
        foreach (var column in _columns)
        {
            foreach (var value in column)
            {
                sum += value;
            }
        }

        return sum;
    }

    [Benchmark]
    public long Evaluate()
    {
        PhaseSegmentation phases = new(new PhaseThresholds());
        ExcursionDetector force = new(
            9_000,
            11_000,
            new ExcursionRule(TimeSpan.FromSeconds(1 / SamplesPerSecond))
        );
        var statistics = new RunningStatistics[Columns];
        var metres = new double[Batch];
        for (var from = 0; from < Rows; from += Batch)
        {
            var rows = from..Math.Min(from + Batch, Rows);
            var time = _columns[0].AsSpan(rows);
            var axial = _columns[1].AsSpan(rows);
            var depth = _columns[2].AsSpan(rows);
            var speed = _columns[3].AsSpan(rows);
            for (var i = 0; i < time.Length; i++)
            {
                metres[i] = time[i] * speed[i];
            }

            phases.Add(new ToolSamples(time, axial, depth, speed));
            force.Add(time, axial, metres.AsSpan(0, time.Length));
            for (var column = 0; column < Columns; column++)
            {
                statistics[column].Add(_columns[column].AsSpan(rows));
            }
        }

        return phases.Complete().Passes.Count + force.Complete().Count + statistics[^1].Count;
    }

    // A second of plunge and dwell, a long traverse with two dips of the force, a second of retraction.
    private static double At(int column, int row)
    {
        var seconds = row / SamplesPerSecond;
        var isDown = row is > 500 and < Rows - 500;
        var isTravelling = row is > 1000 and < Rows - 1000;
        var isDip = row % (Rows / 2) is > 500_000 and < 502_000;
        return column switch
        {
            0 => seconds,
            1 => !isDown ? 0
            : isDip ? 8_000
            : 10_000 + (100 * Math.Sin(seconds)),
            2 => isDown ? 0.0045 : -0.001,
            3 => isTravelling ? 0.0033 : 0,
            _ => column + Math.Sin(seconds * column),
        };
    }
}
