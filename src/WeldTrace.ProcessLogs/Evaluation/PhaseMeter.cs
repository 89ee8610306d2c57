using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Statistics of one column in a phase that is short; percentiles within half of a 4096th of the column's range.</summary>
internal sealed class PhaseMeter
{
    private const int Classes = 4096;
    private const double LeastRange = 1e-300;
    private readonly CountingHistogram _histogram;
    private readonly LineOfTime _line = new();
    private readonly SeriesEnds _ends = new();
    private RunningStatistics _running;

    /// <summary>Makes an empty one.</summary>
    /// <param name="lowest">Least sample of the column.</param>
    /// <param name="range">Greatest less least.</param>
    /// <param name="isWhole">Whether the samples are whole numbers.</param>
    public PhaseMeter(double lowest, double range, bool isWhole) =>
        _histogram =
            isWhole && range < Classes
                ? new(Math.Round(lowest), 1, (int)Math.Round(range) + 1)
                : new(lowest, Math.Max(range, LeastRange) / (Classes - 1), Classes);

    public void Add(ReadOnlySpan<double> digits)
    {
        _running.Add(digits);
        _histogram.Add(digits);
        _line.Add(digits);
        _ends.Add(digits);
    }

    public SeriesFigures Complete() =>
        new(
            SteadyStatistics.From(_running, _histogram),
            _line.SlopePerSample * (_running.Count - 1),
            _ends.Change
        );
}

/// <summary>Figures of a series in its own digits.</summary>
/// <param name="Found">Statistics.</param>
/// <param name="Drift">Change from the first to the last sample by the straight line of least squares.</param>
/// <param name="Change">Mean of the last samples less that of the first.</param>
internal sealed record SeriesFigures(SteadyStatistics Found, double? Drift, double? Change);
