using Microsoft.Extensions.Logging;
using Npgsql;

namespace WeldTrace.Persistence.PrivateServer;

/// <summary>
/// The application's own PostgreSQL server in a data folder: made when missing, restarted when it dies, stopped with
/// the application however that ends.
/// </summary>
public sealed class PrivatePostgresServer(
    PrivateServerSettings settings,
    ILogger<PrivatePostgresServer> logger
) : IAsyncDisposable
{
    public const string Superuser = "weldtrace_owner";
    private static readonly TimeSpan _stopPatience = TimeSpan.FromSeconds(15);
    private static readonly TimeSpan _longestPause = TimeSpan.FromSeconds(30);
    private readonly CancellationTokenSource _stopping = new();
    private readonly Lock _stopGate = new();
    private DataFolder? _folder;
    private ServerLaunch? _launch;
    private ServerProcess? _process;
    private string? _password;
    private Task _supervision = Task.CompletedTask;
    private Task? _stop;

    public string Folder => settings.Folder;

    /// <summary>The process id of the server, or null while it is down.</summary>
    public int? ProcessId =>
        _folder is null
            ? null
            : LeftoverServer.ReadProcessId(Path.Combine(_folder.Cluster, "postmaster.pid"));

    /// <exception cref="DatabaseStartException">The server cannot be started; the message says how to mend it.</exception>
    public async Task StartAsync(CancellationToken cancellation)
    {
        if (_folder is not null || _stop is not null)
        {
            throw new InvalidOperationException("The server was started before.");
        }

        _folder = DataFolder.Open(settings.Folder);
        try
        {
            await StartInAsync(_folder, cancellation);
        }
        catch (Exception cause)
        {
            await StopAsync();
            if (cause is IOException or UnauthorizedAccessException)
            {
                throw DataFolder.Explain(settings.Folder, cause);
            }

            throw;
        }
    }

    /// <summary>The connection string of the owner for a database of this server.</summary>
    public string OwnerConnectionString(string database) =>
        ConnectionString(database, Superuser, _password ?? throw NotStarted());

    public string ConnectionString(string database, string user, string password)
    {
        var connection = (_launch ?? throw NotStarted()).Address.ConnectionTo(database);
        connection.Username = user;
        connection.Password = password;
        return connection.ConnectionString;
    }

    /// <summary>The application role's own password, made at the first call and kept in the data folder.</summary>
    public string ApplicationPassword() =>
        Passwords.ReadOrCreate((_folder ?? throw NotStarted()).ApplicationPasswordFile);

    /// <summary>Stops the server; whoever else asks for it meanwhile waits for the same end.</summary>
    public Task StopAsync()
    {
        lock (_stopGate)
        {
            return _stop ??= StopOnceAsync();
        }
    }

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        _stopping.Dispose();
    }

    private static InvalidOperationException NotStarted() =>
        new("The database server is not started.");

    private async Task StopOnceAsync()
    {
        await _stopping.CancelAsync();
        await _supervision;
        if (_process is { } process)
        {
            _process = null;
            await process.StopAsync(_stopPatience);
            process.Dispose();
            // Sessions kept for later use belong to the server that has just ended.
            NpgsqlConnection.ClearAllPools();
            logger.LogInformation("The database server has stopped");
        }

        _folder?.Dispose();
        _folder = null;
    }

    private async Task StartInAsync(DataFolder folder, CancellationToken cancellation)
    {
        var account = await ServerAccount.ChooseAsync(folder, cancellation);
        await account.RequireWayToAsync(folder.Path, cancellation);
        var programs = await ServerPrograms.FindAsync(
            settings.BinFolder,
            folder.Cluster,
            cancellation
        );
        if (!folder.HasCluster)
        {
            logger.LogInformation("Making a new database in {Folder}", folder.Path);
            await ClusterCreation.RunAsync(folder, programs, account, Superuser, cancellation);
        }

        _password = Passwords.Read(folder.OwnerPasswordFile);
        _launch = new ServerLaunch(settings, folder.Cluster, programs, account, _password, logger);
        _process = await _launch.StartAsync(mayMove: true, cancellation);
        logger.LogInformation("The database server answers in {Folder}", folder.Path);
        _supervision = SuperviseAsync(_launch, _stopping.Token);
    }

    private async Task SuperviseAsync(ServerLaunch launch, CancellationToken stopping)
    {
        var pause = TimeSpan.Zero;
        while (!stopping.IsCancellationRequested)
        {
            try
            {
                await (_process?.Exited ?? Task.CompletedTask).WaitAsync(stopping);
                await Task.Delay(pause, stopping);
                _process?.Dispose();
                _process = null;
                NpgsqlConnection.ClearAllPools();
                logger.LogWarning(
                    "The database server has ended unexpectedly; it is started again"
                );
                _process = await launch.StartAsync(mayMove: false, stopping);
                pause = TimeSpan.Zero;
            }
            catch (OperationCanceledException) when (stopping.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
                when (fault is DatabaseStartException or IOException or NpgsqlException)
            {
                pause = TimeSpan.FromSeconds(
                    Math.Clamp(pause.TotalSeconds * 2, 1, _longestPause.TotalSeconds)
                );
                logger.LogCritical("{Message} The next try is in {Pause}.", fault.Message, pause);
            }
        }
    }
}
