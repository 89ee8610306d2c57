using WeldTrace.Engineering.Quantities;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>A few dozen places of the run, evenly spaced in samples, for axes and drawings.</summary>
internal sealed class SeamPoints(long sampleCount)
{
    private const int Wanted = 60;
    private readonly long _stride = Math.Max(1, sampleCount / Wanted);
    private readonly List<SeamPoint> _points = [];
    private SeamPoint? _last;

    public IReadOnlyList<SeamPoint> Complete() =>
        _last is { } last && last != _points[^1] ? [.. _points, last] : _points;

    public void Add(long first, ReadOnlySpan<double> seconds, ReadOnlySpan<double> metres)
    {
        var next = (first + _stride - 1) / _stride * _stride;
        for (; next < first + seconds.Length; next += _stride)
        {
            var i = (int)(next - first);
            _points.Add(new(seconds[i], Length.FromMetres(metres[i])));
        }

        _last = new(seconds[^1], Length.FromMetres(metres[^1]));
    }
}
