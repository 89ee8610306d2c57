using System.Globalization;
using Microsoft.Extensions.Logging;

namespace WeldTrace.Persistence.PrivateServer;

/// <summary>What a killed application left behind: a server that still stops, or a process id that means nothing now.</summary>
internal static class LeftoverServer
{
    private static readonly TimeSpan _step = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan _longest = TimeSpan.FromSeconds(30);

    public static async Task WaitAsync(
        string cluster,
        ILogger logger,
        CancellationToken cancellation
    )
    {
        string[] marks = ["postmaster.pid", $"{ServerAddress.SocketName}.lock"];
        foreach (var mark in marks.Select(name => Path.Combine(cluster, name)))
        {
            await WaitAsync(cluster, mark, cancellation);
            RemoveIfMisleading(mark, logger);
        }
    }

    public static int? ReadProcessId(string file)
    {
        try
        {
            var line = File.ReadLines(file).FirstOrDefault();
            return int.TryParse(
                line,
                NumberStyles.Integer,
                CultureInfo.InvariantCulture,
                out var id
            )
                ? id
                : null;
        }
        catch (IOException)
        {
            return null;
        }
    }

    private static async Task WaitAsync(string cluster, string mark, CancellationToken cancellation)
    {
        var waited = TimeSpan.Zero;
        while (ReadProcessId(mark) is { } id && IsServerOf(cluster, id))
        {
            if (waited >= _longest)
            {
                throw StillRunning(cluster, id);
            }

            if (waited == _patience)
            {
                await Command.RunAsync(
                    ["kill", "-INT", id.ToString(CultureInfo.InvariantCulture)],
                    cancellation
                );
            }

            await Task.Delay(_step, cancellation);
            waited += _step;
        }
    }

    private static void RemoveIfMisleading(string file, ILogger logger)
    {
        // PostgreSQL removes the file of a dead server by itself, but not one whose number another process has now,
        // or that of a killed server which nobody has collected yet.
        if (ReadProcessId(file) is { } id && Directory.Exists($"/proc/{id}"))
        {
            logger.LogWarning(
                "Removing the stale file {File}: process {Id} is not its server",
                file,
                id
            );
            File.Delete(file);
        }
    }

    private static bool IsServerOf(string cluster, int id)
    {
        try
        {
            var name = File.ReadAllText($"/proc/{id}/comm").Trim();
            var words = File.ReadAllText($"/proc/{id}/cmdline").Split('\0');
            return name == "postgres" && words.Contains(cluster);
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static DatabaseStartException StillRunning(string cluster, int id) =>
        new(
            DatabaseStartProblem.FolderInUse,
            $"A database server left by an earlier start still runs as process {id} and does not stop",
            cluster,
            $"Stop it with: kill -INT {id}, wait until it has gone, and start again."
        );
}
