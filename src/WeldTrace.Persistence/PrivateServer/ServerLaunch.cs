using Microsoft.Extensions.Logging;
using Npgsql;

namespace WeldTrace.Persistence.PrivateServer;

/// <summary>Starts the server on its cluster and waits until it accepts the owner's password.</summary>
internal sealed class ServerLaunch(
    PrivateServerSettings settings,
    string cluster,
    ServerPrograms programs,
    ServerAccount account,
    string password,
    ILogger logger
)
{
    private const int Tries = 3;
    private static readonly TimeSpan _longestRecovery = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan _stopPatience = TimeSpan.FromSeconds(15);

    public ServerAddress Address { get; private set; } =
        ServerAddress.Choose(cluster, settings.UsesLoopback);

    /// <param name="mayMove">Takes another port for another try, which only a first start may do.</param>
    /// <param name="cancellation">Gives up and stops what was started.</param>
    public async Task<ServerProcess> StartAsync(bool mayMove, CancellationToken cancellation)
    {
        for (var attempt = 1; ; attempt++)
        {
            await LeftoverServer.WaitAsync(cluster, logger, cancellation);
            var process = ServerProcess.Start([.. account.Prefix, .. Words()], logger);
            try
            {
                await WaitUntilReadyAsync(process, cancellation);
                return process;
            }
            catch (Exception fault)
            {
                await process.StopAsync(_stopPatience);
                process.Dispose();
                if (
                    attempt == Tries
                    || fault
                        is not DatabaseStartException
                        {
                            Problem: DatabaseStartProblem.ServerDidNotStart
                        }
                )
                {
                    throw;
                }
            }

            Address = mayMove ? Address.Another() : Address;
            await Task.Delay(TimeSpan.FromMilliseconds(300 * attempt), cancellation);
        }
    }

    private List<string> Words()
    {
        List<string> words = [programs.Postgres, "-D", cluster, .. Address.Options];
        Set("max_connections", FormattableString.Invariant($"{settings.MaximumSessions}"));
        Set("timezone", "UTC");
        Set("log_timezone", "UTC");
        Set("logging_collector", "off");
        // Values that people typed must not reach the log.
        Set("log_error_verbosity", "terse");
        Set("log_min_error_statement", "panic");
        if (!settings.IsDurable)
        {
            Set("fsync", "off");
            Set("full_page_writes", "off");
            Set("synchronous_commit", "off");
        }

        return words;

        void Set(string name, string value) => words.AddRange(["-c", $"{name}={value}"]);
    }

    private async Task WaitUntilReadyAsync(ServerProcess process, CancellationToken cancellation)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        patience.CancelAfter(_longestRecovery);
        while (!process.Exited.IsCompleted)
        {
            if (await AnswersAsync(patience.Token))
            {
                return;
            }

            await Task.WhenAny(process.Exited, Task.Delay(50, patience.Token));
            cancellation.ThrowIfCancellationRequested();
            if (patience.IsCancellationRequested)
            {
                break;
            }
        }

        throw Explain(process.LastLines);
    }

    private async Task<bool> AnswersAsync(CancellationToken cancellation)
    {
        var owner = Address.ConnectionTo("postgres");
        owner.Username = PrivatePostgresServer.Superuser;
        owner.Password = password;
        owner.Pooling = false;
        owner.Timeout = 5;
        await using var connection = new NpgsqlConnection(owner.ConnectionString);
        try
        {
            await connection.OpenAsync(cancellation);
            return true;
        }
        catch (PostgresException refused)
            when (refused.SqlState == PostgresErrorCodes.InvalidPassword)
        {
            throw Passwords.Lost(cluster, refused);
        }
        catch (Exception notYet)
            when (notYet is NpgsqlException or TimeoutException or OperationCanceledException)
        {
            return false;
        }
    }

    private DatabaseStartException Explain(string lines) =>
        lines.Contains("No space left on device", StringComparison.Ordinal)
            ? DatabaseStartException.NoSpaceLeft(cluster)
            : new DatabaseStartException(
                DatabaseStartProblem.ServerDidNotStart,
                $"The database server did not start. It said: {lines}",
                cluster,
                "Mend what it complains about and start again, or restore the last backup into an empty folder."
            );
}
