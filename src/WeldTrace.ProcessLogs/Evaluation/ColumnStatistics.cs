using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Statistics of one column in every phase, and of its steady traverse with percentiles.</summary>
internal sealed class ColumnStatistics
{
    private const int MostClasses = 262_144;
    private const double LeastRange = 1e-300;

    private static readonly WeldPhase[] Phases =
    [
        WeldPhase.Plunge,
        WeldPhase.Dwell,
        WeldPhase.Traverse,
        WeldPhase.Exit,
    ];

    private readonly LogColumn _column;
    private readonly double _siPerDigit;
    private readonly RunningStatistics[] _phases = new RunningStatistics[
        Enum.GetValues<WeldPhase>().Length
    ];
    private readonly CountingHistogram _histogram;
    private readonly LineOfTime _line = new();
    private readonly bool _histogramIsExact;
    private RunningStatistics _steady;
    private WeldPhase _steadyPhase;

    public ColumnStatistics(LogColumn column, ProcessLog log)
    {
        _column = column;
        _siPerDigit = column.ScaleToSi / column.DigitsPerUnit;
        (_histogram, _histogramIsExact) = Histogram(column, log);
    }

    public LogColumn Column => _column;

    /// <summary>Takes a piece of a frame.</summary>
    public void Add(LogFrames frames, FramePiece piece)
    {
        var rows = piece.From..piece.To;
        if (piece.Steady is null)
        {
            _phases[(int)piece.Phase].Add(frames.Digits(_column)[rows]);
            return;
        }

        _steadyPhase = piece.Phase;
        if (_histogramIsExact && frames.Whole(_column) is { IsEmpty: false } whole)
        {
            _histogram.Add(whole[rows]);
            _line.Add(whole[rows]);
            return;
        }

        var digits = frames.Digits(_column)[rows];
        _histogram.Add(digits);
        _line.Add(digits);
        if (!_histogramIsExact)
        {
            _steady.Add(digits);
        }
    }

    public IEnumerable<PhaseStatistics> Complete()
    {
        _steady = _histogramIsExact ? _histogram.Statistics() : _steady;
        _phases[(int)_steadyPhase].Add(_steady);
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
            MeanSi = _column.DigitsToSi(found.MeanInSampleUnit),
            StandardDeviationSi = Math.Abs(_siPerDigit) * found.StandardDeviationInSampleUnit,
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
            MedianSi = _column.DigitsToSi(found.MedianInSampleUnit),
            P99Si = p99,
            DriftSi = _line.SlopePerSample * (steady.Count - 1) * _siPerDigit,
        };
    }

    /// <summary>Both in SI, the smaller one first: a negative factor turns them round.</summary>
    private (double, double) InOrder(double low, double high) =>
        _column.ScaleToSi < 0
            ? (_column.DigitsToSi(high), _column.DigitsToSi(low))
            : (_column.DigitsToSi(low), _column.DigitsToSi(high));

    private static (CountingHistogram, bool IsExact) Histogram(LogColumn column, ProcessLog log)
    {
        var (lowest, highest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var chunk in log.Chunks.Where(chunk => chunk.Ordinal == column.Ordinal))
        {
            lowest = Math.Min(lowest, chunk.MinimumAsLogged);
            highest = Math.Max(highest, chunk.MaximumAsLogged);
        }

        (lowest, highest) = (lowest * column.DigitsPerUnit, highest * column.DigitsPerUnit);
        var range = Math.Max(0, highest - lowest);
        return column.IsFixedDecimal && range < MostClasses - 1
            ? (new(Math.Round(lowest), 1, (int)Math.Round(range) + 1), true)
            : (new(lowest, Math.Max(range, LeastRange) / (MostClasses - 1), MostClasses), false);
    }
}
