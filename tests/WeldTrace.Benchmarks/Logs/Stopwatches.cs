using System.Diagnostics;

namespace WeldTrace.Benchmarks.Logs;

/// <summary>Medians of a few turns after one that is not counted.</summary>
internal static class Stopwatches
{
    public static async Task<double> MedianAsync(int turns, Func<Task> act)
    {
        await act();
        var times = new double[turns];
        for (var i = 0; i < turns; i++)
        {
            var start = Stopwatch.GetTimestamp();
            await act();
            times[i] = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        }

        Array.Sort(times);
        return times[turns / 2];
    }

    public static Task<double> MedianAsync(int turns, Action act) =>
        MedianAsync(
            turns,
            () =>
            {
                act();
                return Task.CompletedTask;
            }
        );
}
