using WeldTrace.Engineering.Signals;
using WeldTrace.ProcessLogs.Storage;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Statistics of one column in every phase, and of its steady traverse with percentiles.</summary>
internal sealed class ColumnStatistics
{
    private const int MostClasses = 262_144;

    private static readonly WeldPhase[] Phases =
    [
        WeldPhase.Plunge,
        WeldPhase.Dwell,
        WeldPhase.Traverse,
        WeldPhase.Exit,
    ];

    private readonly LogColumn _column;
    private readonly RunningStatistics[] _phases = new RunningStatistics[
        Enum.GetValues<WeldPhase>().Length
    ];
    private readonly CountingHistogram _histogram;
    private readonly LineOfTime _line = new();
    private RunningStatistics _steady;

    public ColumnStatistics(LogColumn column, ProcessLog log)
    {
        _column = column;
        _histogram = Histogram(column, log);
    }

    public LogColumn Column => _column;

    public void Add(WeldPhase phase, ReadOnlySpan<double> asLogged) =>
        _phases[(int)phase].Add(asLogged);

    public void AddSteady(ReadOnlySpan<double> asLogged)
    {
        _steady.Add(asLogged);
        _histogram.Add(asLogged);
        _line.Add(asLogged);
    }

    public IEnumerable<PhaseStatistics> Complete()
    {
        foreach (var phase in Phases.Where(phase => _phases[(int)phase].Count > 0))
        {
            yield return Describe(phase, _phases[(int)phase]);
        }

        if (_steady.Count > 0)
        {
            yield return WithPercentiles(
                Describe(WeldPhase.Traverse, _steady),
                SteadyStatistics.From(_steady, _histogram)
            );
        }
    }

    private PhaseStatistics Describe(WeldPhase phase, in RunningStatistics found)
    {
        var (minimum, maximum) = InOrder(found.MinimumInSampleUnit, found.MaximumInSampleUnit);
        return new PhaseStatistics
        {
            Ordinal = _column.Ordinal,
            Channel = _column.Channel,
            Column = _column.Name,
            Phase = phase,
            IsSteady = false,
            SiUnit = _column.SiUnit,
            Count = found.Count,
            MeanSi = _column.ToSi(found.MeanInSampleUnit),
            StandardDeviationSi = Math.Abs(_column.ScaleToSi) * found.StandardDeviationInSampleUnit,
            MinimumSi = minimum,
            MaximumSi = maximum,
        };
    }

    private PhaseStatistics WithPercentiles(PhaseStatistics steady, SteadyStatistics found)
    {
        var (p1, p99) = InOrder(found.P1InSampleUnit, found.P99InSampleUnit);
        return steady with
        {
            IsSteady = true,
            P1Si = p1,
            MedianSi = _column.ToSi(found.MedianInSampleUnit),
            P99Si = p99,
            DriftSi = _line.SlopePerSample * (steady.Count - 1) * _column.ScaleToSi,
        };
    }

    /// <summary>Both in SI, the smaller one first: a negative factor turns them round.</summary>
    private (double, double) InOrder(double low, double high) =>
        _column.ScaleToSi < 0
            ? (_column.ToSi(high), _column.ToSi(low))
            : (_column.ToSi(low), _column.ToSi(high));

    private static CountingHistogram Histogram(LogColumn column, ProcessLog log)
    {
        var (lowest, highest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var chunk in log.Chunks.Where(chunk => chunk.Ordinal == column.Ordinal))
        {
            lowest = Math.Min(lowest, chunk.MinimumAsLogged);
            highest = Math.Max(highest, chunk.MaximumAsLogged);
        }

        var range = highest - lowest;
        var digits = range * PowersOfTen.AsDouble(column.Decimals);
        return range <= 0 ? new(lowest, 1, 1)
            : column.IsFixedDecimal && digits < MostClasses - 1
                ? new(
                    lowest,
                    1 / PowersOfTen.AsDouble(column.Decimals),
                    (int)Math.Round(digits) + 1
                )
            : new(lowest, range / (MostClasses - 1), MostClasses);
    }
}
