using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>One stretch of the traverse without its ramps, and where it lies on the seam.</summary>
internal sealed class SteadyTime(double fromSeconds, double toSeconds)
{
    private double _fromMetres = double.NaN;
    private double _toMetres;

    public static SteadyTime[] Of(RunPhases phases, TimeSpan longestRamp) =>
        [
            .. phases
                .Passes.Where(pass => pass.HasTraverse)
                .Select(pass => pass.SteadyTraverse(longestRamp))
                .Select(time => new SteadyTime(time.FromSeconds, time.ToSeconds)),
        ];

    /// <summary>The samples of a frame that lie in the stretch, as a half-open range.</summary>
    public (int From, int To) In(ReadOnlySpan<double> seconds)
    {
        if (seconds[0] > toSeconds || seconds[^1] < fromSeconds)
        {
            return (0, 0);
        }

        var from = seconds.BinarySearch(fromSeconds);
        var to = seconds.BinarySearch(toSeconds);
        return (from < 0 ? ~from : from, to < 0 ? ~to : to + 1);
    }

    public void Follow(double fromMetres, double toMetres)
    {
        _fromMetres = double.IsNaN(_fromMetres) ? fromMetres : _fromMetres;
        _toMetres = toMetres;
    }

    public SteadyStretch Describe() =>
        new(
            fromSeconds,
            toSeconds,
            Length.FromMetres(double.IsNaN(_fromMetres) ? 0 : _fromMetres),
            Length.FromMetres(_toMetres)
        );
}
