using System.Diagnostics;
using System.Globalization;

namespace WeldTrace.Web.Tests.Crash;

/// <summary>The process that logs runs, and everything that it acknowledged before it died.</summary>
internal sealed class WriterProcess : IDisposable
{
    private static readonly TimeSpan _patience = TimeSpan.FromMinutes(3);
    private readonly string _folder;
    private readonly Process _process;
    private readonly List<(string Act, Guid Run)> _acknowledged = [];
    private readonly List<string> _failures = [];

    private WriterProcess(string folder, Process process)
    {
        (_folder, _process) = (folder, process);
        process.OutputDataReceived += (_, line) => Keep(line.Data);
        process.ErrorDataReceived += (_, line) => Fail(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>Acts that somebody was told are done.</summary>
    public IReadOnlyList<(string Act, Guid Run)> Acknowledged
    {
        get
        {
            lock (_acknowledged)
            {
                return [.. _acknowledged];
            }
        }
    }

    public static WriterProcess Start(string folder, string name, string logFile)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "WeldTrace.RunWriter.dll");
        var start = new ProcessStartInfo("dotnet", ["exec", program, folder, name, logFile])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        return new WriterProcess(folder, Process.Start(start)!);
    }

    /// <summary>Waits until so many more acts are acknowledged.</summary>
    public async Task AcknowledgesAsync(int more, CancellationToken cancellation)
    {
        var (watch, wanted) = (Stopwatch.StartNew(), Acknowledged.Count + more);
        while (Acknowledged.Count < wanted)
        {
            Assert.True(
                watch.Elapsed < _patience && !_process.HasExited,
                $"{Acknowledged.Count} acts of {wanted} came through in {watch.Elapsed.TotalSeconds:F0} s; the process {(_process.HasExited ? $"ended with {_process.ExitCode}" : "still runs")}. {Failures}"
            );
            await Task.Delay(1, cancellation);
        }
    }

    /// <summary>Kills the database under the process; its watchdog starts it again.</summary>
    public void KillDatabase() => Kill(ServerId());

    /// <summary>Kills the process, the watchdog of its database and the database, all at once.</summary>
    public async Task KillEverythingAsync()
    {
        var server = ServerId();
        Kill(_process.Id, ParentOf(server), server);
        // Waits for the end of the output too: what was acknowledged last must be counted.
        await _process.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.Dispose();
    }

    private string Failures
    {
        get
        {
            lock (_failures)
            {
                return string.Join("\n", _failures.TakeLast(12));
            }
        }
    }

    private int ServerId() =>
        int.Parse(
            File.ReadLines(Path.Combine(_folder, "cluster", "postmaster.pid")).First(),
            CultureInfo.InvariantCulture
        );

    private static int ParentOf(int id) =>
        int.Parse(
            File.ReadLines($"/proc/{id}/status")
                .Single(l => l.StartsWith("PPid:", StringComparison.Ordinal))[5..],
            CultureInfo.InvariantCulture
        );

    private static void Kill(params int[] ids)
    {
        using var kill = Process.Start(
            "kill",
            ["-9", .. ids.Select(id => id.ToString(CultureInfo.InvariantCulture))]
        );
        kill.WaitForExit();
        Assert.Equal(0, kill.ExitCode);
    }

    private void Keep(string? line)
    {
        // A line that death cut in two was not received.
        if (line?.Split(' ') is [var act, { Length: 36 } run])
        {
            lock (_acknowledged)
            {
                _acknowledged.Add((act, Guid.Parse(run)));
            }
        }
    }

    private void Fail(string? line)
    {
        lock (_failures)
        {
            _failures.Add(line ?? "");
        }
    }
}
