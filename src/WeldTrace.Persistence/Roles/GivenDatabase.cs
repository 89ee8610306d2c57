using System.Diagnostics;
using System.Net.Sockets;
using Microsoft.Extensions.Logging;
using Npgsql;
using WeldTrace.Persistence.PrivateServer;

namespace WeldTrace.Persistence.Roles;

/// <summary>A database on a server that someone else runs; it may still be starting when the application does.</summary>
public static class GivenDatabase
{
    private static readonly TimeSpan _longestWait = TimeSpan.FromSeconds(90);

    public static async Task<DatabaseConnections> EnsureAsync(
        DatabaseSettings settings,
        ILogger logger,
        CancellationToken cancellation
    )
    {
        var connections = settings.OnGivenServer();
        await WaitAsync(connections, logger, cancellation);
        if (settings.Application is null)
        {
            await ApplicationRole.EnsureAsync(connections, cancellation);
        }

        await ApplicationRole.RequireNarrowAsync(connections, cancellation);
        return connections;
    }

    private static async Task WaitAsync(
        DatabaseConnections connections,
        ILogger logger,
        CancellationToken cancellation
    )
    {
        var watch = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                await using var connection = new NpgsqlConnection(connections.Owner);
                await connection.OpenAsync(cancellation);
                return;
            }
            catch (NpgsqlException fault) when (MayPass(fault) && watch.Elapsed < _longestWait)
            {
                logger.LogInformation(
                    "Waiting for the {Database}: {Reason}",
                    connections,
                    fault.Message
                );
                await Task.Delay(TimeSpan.FromSeconds(1), cancellation);
            }
            catch (NpgsqlException fault)
            {
                throw new DatabaseStartException(
                    DatabaseStartProblem.ServerNotReachable,
                    $"The database server does not let WeldTrace in: {fault.Message}",
                    connections.ToString(),
                    "Check host, port, user, password and database in ConnectionStrings:WeldTrace, and that the server runs.",
                    fault
                );
            }
        }
    }

    private static bool MayPass(NpgsqlException fault) =>
        fault.IsTransient
        || fault.InnerException is SocketException or IOException or TimeoutException;
}
