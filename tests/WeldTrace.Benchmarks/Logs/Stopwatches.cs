using System.Diagnostics;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>The quickest of a few turns, after one that is not counted: what else runs on the machine only adds time.</summary>
internal static class Stopwatches
{
    public static async Task<double> QuickestAsync(int turns, Func<Task> act)
    {
        await act();
        var times = new double[turns];
        for (var i = 0; i < turns; i++)
        {
            var start = Stopwatch.GetTimestamp();
            await act();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        return times.Min();
    }

    public static Task<double> QuickestAsync(int turns, Action act) =>
        QuickestAsync(
            turns,
            () =>
            {
                act();
                return Task.CompletedTask;
            }
        );
}
