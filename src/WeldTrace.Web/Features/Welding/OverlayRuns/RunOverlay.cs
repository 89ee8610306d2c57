using WeldTrace.Domain.Welding;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Web.Features.Welding.OverlayRuns;

/// <summary>One channel of one run, to be laid over others.</summary>
/// <param name="Buckets">Stretches of time with their extremes, in order.</param>
/// <param name="Places">Where the tool was, in order of time.</param>
public sealed record OverlaidRun(
    IReadOnlyList<ChartBucket> Buckets,
    IReadOnlyList<LoggedPlace> Places
);

/// <summary>Runs on one axis, the way along the seam: of each stretch of it the least and the greatest of each run.</summary>
public static class RunOverlay
{
    /// <summary>Stretches of the seam that are drawn.</summary>
    public const int Bins = 800;

    /// <summary>The places of the axis, and a column for each run; NaN where a run has not been.</summary>
    /// <param name="runs">Runs.</param>
    /// <param name="fromMetres">Where the axis begins.</param>
    /// <param name="toMetres">Where it ends, beyond its begin.</param>
    public static (double[] AxisMetres, IReadOnlyList<double[]> ColumnsSi) Of(
        IReadOnlyList<OverlaidRun> runs,
        double fromMetres,
        double toMetres
    )
    {
        ArgumentNullException.ThrowIfNull(runs);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(toMetres, fromMetres);
        var width = (toMetres - fromMetres) / Bins;
        return (
            [.. Enumerable.Range(0, 2 * Bins).Select(i => fromMetres + (i * width / 2))],
            [.. runs.Select(run => Column(run, fromMetres, width))]
        );
    }

    private static double[] Column(OverlaidRun run, double from, double width)
    {
        var column = new double[2 * Bins];
        Array.Fill(column, double.NaN);
        foreach (var bucket in run.Buckets)
        {
            var first = (SeamTime.PlaceAt(run.Places, bucket.FromSeconds) - from) / width;
            var last = (SeamTime.PlaceAt(run.Places, bucket.ToSeconds) - from) / width;
            for (var bin = (int)Math.Max(0, Math.Floor(first)); bin <= last && bin < Bins; bin++)
            {
                column[2 * bin] = Math.Min(Or(column[2 * bin], bucket.MinimumSi), bucket.MinimumSi);
                column[(2 * bin) + 1] = Math.Max(
                    Or(column[(2 * bin) + 1], bucket.MaximumSi),
                    bucket.MaximumSi
                );
            }
        }

        Bridge(column);
        return column;
    }

    private static double Or(double value, double other) => double.IsNaN(value) ? other : value;

    // Looked at so closely that a stretch holds no sample, the line runs straight from one to the next, as on every chart.
    private static void Bridge(double[] column)
    {
        var known = -1;
        for (var i = 0; i < column.Length; i++)
        {
            if (double.IsNaN(column[i]))
            {
                continue;
            }

            for (var gap = known + 1; known >= 0 && gap < i; gap++)
            {
                column[gap] =
                    column[known]
                    + ((column[i] - column[known]) * (gap - known) / (double)(i - known));
            }

            known = i;
        }
    }
}
