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
    private readonly SeriesEnds _ends = new();
    private readonly PhaseMeter?[] _meters = new PhaseMeter?[Enum.GetValues<TradePhase>().Length];
    private readonly (double Lowest, double Range) _extent;
    private SeriesFigures? _traverse;

    public ColumnStatistics(LogColumn column, ProcessLog log)
    {
        _column = column;
        _siPerDigit = column.ScaleToSi / column.DigitsPerUnit;
        _extent = Extent(column, log);
        (_histogram, _histogramIsExact) = Histogram(column, _extent);
    }

    public LogColumn Column => _column;

    /// <summary>Takes a piece of a frame.</summary>
    public void Add(LogFrames frames, FramePiece piece)
    {
        var rows = piece.From..piece.To;
        if (piece.Trade is { } trade and not TradePhase.Traverse)
        {
            // What was steady up to here is the traverse.
            _traverse ??= trade == TradePhase.Overlap ? SteadyFigures() : null;
            ref var meter = ref _meters[(int)trade];
            meter ??= new(_extent.Lowest, _extent.Range, _column.IsFixedDecimal);
            meter.Add(frames.Digits(_column)[rows]);
        }

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
            _ends.Add(whole[rows]);
            return;
        }

        var digits = frames.Digits(_column)[rows];
        _histogram.Add(digits);
        _line.Add(digits);
        _ends.Add(digits);
        if (!_histogramIsExact)
        {
            _steady.Add(digits);
        }
    }

    /// <summary>Figures of a phase; none when the run had no such phase.</summary>
    public PhaseStatistics? Of(TradePhase phase) =>
        (
            phase == TradePhase.Traverse
                ? _traverse ?? SteadyFigures()
                : _meters[(int)phase]?.Complete()
        )
            is { } found
            ? Describe(PhaseOf(phase), found) with
            {
                IsSteady = phase == TradePhase.Traverse,
            }
            : null;

    private static WeldPhase PhaseOf(TradePhase phase) =>
        phase switch
        {
            TradePhase.Plunge => WeldPhase.Plunge,
            TradePhase.Dwell => WeldPhase.Dwell,
            TradePhase.Exit => WeldPhase.Exit,
            _ => WeldPhase.Traverse,
        };

    private SeriesFigures? SteadyFigures()
    {
        var steady = _histogramIsExact ? _histogram.Statistics() : _steady;
        return steady.Count == 0
            ? null
            : new(
                SteadyStatistics.From(steady, _histogram),
                _line.SlopePerSample * (steady.Count - 1),
                _ends.Change
            );
    }

    public IEnumerable<PhaseStatistics> Complete()
    {
        _steady = _histogramIsExact ? _histogram.Statistics() : _steady;
        _phases[(int)_steadyPhase].Add(_steady);
        foreach (var phase in Phases.Where(phase => _phases[(int)phase].Count > 0))
        {
            yield return Describe(phase, _phases[(int)phase]);
        }

        if (SteadyFigures() is { } all)
        {
            yield return Describe(WeldPhase.Traverse, all) with
            {
                IsSteady = true,
            };
        }
    }

    private PhaseStatistics Describe(WeldPhase phase, in RunningStatistics found) =>
        Describe(
            phase,
            found.Count,
            found.MeanInSampleUnit,
            found.StandardDeviationInSampleUnit,
            InOrder(found.MinimumInSampleUnit, found.MaximumInSampleUnit)
        );

    private PhaseStatistics Describe(WeldPhase phase, SeriesFigures series)
    {
        var found = series.Found;
        var (p1, p99) = InOrder(found.P1InSampleUnit, found.P99InSampleUnit);
        var moments = Describe(
            phase,
            found.Count,
            found.MeanInSampleUnit,
            found.StandardDeviationInSampleUnit,
            InOrder(found.MinimumInSampleUnit, found.MaximumInSampleUnit)
        );
        return moments with
        {
            P1Si = p1,
            MedianSi = _column.DigitsToSi(found.MedianInSampleUnit),
            P99Si = p99,
            DriftSi = series.Drift * _siPerDigit,
            ChangeSi = series.Change * _siPerDigit,
        };
    }

    private PhaseStatistics Describe(
        WeldPhase phase,
        long count,
        double mean,
        double standardDeviation,
        (double MinimumSi, double MaximumSi) range
    ) =>
        new()
        {
            Ordinal = _column.Ordinal,
            Channel = _column.Channel,
            Column = _column.Name,
            Phase = phase,
            IsSteady = false,
            SiUnit = _column.SiUnit,
            Count = count,
            MeanSi = _column.DigitsToSi(mean),
            StandardDeviationSi = Math.Abs(_siPerDigit) * standardDeviation,
            MinimumSi = range.MinimumSi,
            MaximumSi = range.MaximumSi,
        };

    /// <summary>Both in SI, the smaller one first: a negative factor turns them round.</summary>
    private (double, double) InOrder(double low, double high) =>
        _column.ScaleToSi < 0
            ? (_column.DigitsToSi(high), _column.DigitsToSi(low))
            : (_column.DigitsToSi(low), _column.DigitsToSi(high));

    private static (double Lowest, double Range) Extent(LogColumn column, ProcessLog log)
    {
        var (lowest, highest) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var chunk in log.Chunks)
        {
            if (chunk.Ordinal == column.Ordinal)
            {
                lowest = Math.Min(lowest, chunk.MinimumAsLogged);
                highest = Math.Max(highest, chunk.MaximumAsLogged);
            }
        }

        (lowest, highest) = (lowest * column.DigitsPerUnit, highest * column.DigitsPerUnit);
        return (lowest, Math.Max(0, highest - lowest));
    }

    private static (CountingHistogram, bool IsExact) Histogram(
        LogColumn column,
        (double Lowest, double Range) extent
    ) =>
        column.IsFixedDecimal && extent.Range < MostClasses - 1
            ? (new(Math.Round(extent.Lowest), 1, (int)Math.Round(extent.Range) + 1), true)
            : (
                new(
                    extent.Lowest,
                    Math.Max(extent.Range, LeastRange) / (MostClasses - 1),
                    MostClasses
                ),
                false
            );
}
