using System.Collections.Concurrent;
using System.Diagnostics;
using Microsoft.Extensions.Logging;

namespace WeldTrace.Persistence.PrivateServer;

/// <summary>One run of the server below a small shell that stops it when this process closes the pipe or dies.</summary>
internal sealed class ServerProcess : IDisposable
{
    // The shell keeps Ctrl-C away from the server (setsid). Its inner part must let go of the output pipes: while
    // anyone holds them, the end of the server goes unnoticed here.
    private const string Watchdog =
        "exec 3<&0; \"$@\" </dev/null 3<&- & p=$!; trap '' INT TERM HUP; "
        + "(exec >/dev/null 2>&1; read -r x <&3; kill -INT $p) & w=$!; wait $p; r=$?; kill -9 $w; exit $r";

    private const int KeptLines = 20;
    private readonly Process _process;
    private readonly ILogger _logger;
    private readonly ConcurrentQueue<string> _lines = new();

    private ServerProcess(Process process, ILogger logger)
    {
        _process = process;
        _logger = logger;
        Exited = Task.CompletedTask;
    }

    /// <summary>Completes when the server has ended, for whatever reason.</summary>
    public Task Exited { get; private set; }

    /// <summary>The last lines that the server wrote, newest last.</summary>
    public string LastLines => string.Join(Environment.NewLine, _lines);

    public static ServerProcess Start(IReadOnlyList<string> server, ILogger logger)
    {
        var process = new Process
        {
            StartInfo = Command.Describe(["setsid", "/bin/sh", "-c", Watchdog, "sh", .. server]),
        };
        var started = new ServerProcess(process, logger);
        process.OutputDataReceived += (_, line) => started.Take(line.Data);
        process.ErrorDataReceived += (_, line) => started.Take(line.Data);
        process.Start();
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        started.Exited = process.WaitForExitAsync();
        return started;
    }

    /// <summary>Asks the server to end its sessions and stop; kills it when it has not done so in time.</summary>
    public async Task StopAsync(TimeSpan patience)
    {
        _process.StandardInput.Close();
        try
        {
            await Exited.WaitAsync(patience);
        }
        catch (TimeoutException)
        {
            _logger.LogWarning(
                "The database server did not stop in {Patience}; it is killed now",
                patience
            );
            _process.Kill(entireProcessTree: true);
            await Exited;
        }
    }

    public void Dispose() => _process.Dispose();

    private void Take(string? line)
    {
        if (line is null)
        {
            return;
        }

        _lines.Enqueue(line);
        while (_lines.Count > KeptLines)
        {
            _lines.TryDequeue(out _);
        }

        _logger.Log(LevelOf(line), "{Line}", line);
    }

    private static LogLevel LevelOf(string line) =>
        line switch
        {
            _ when line.Contains("the database system is ", StringComparison.Ordinal) =>
                LogLevel.Debug,
            _ when line.Contains("administrator command", StringComparison.Ordinal) =>
                LogLevel.Debug,
            _ when line.Contains("PANIC:", StringComparison.Ordinal) => LogLevel.Critical,
            _ when line.Contains("FATAL:", StringComparison.Ordinal) => LogLevel.Warning,
            _ when line.Contains("ERROR:", StringComparison.Ordinal) => LogLevel.Warning,
            _ => LogLevel.Debug,
        };
}
