using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using WeldTrace.Persistence.PrivateServer;

namespace WeldTrace.Persistence.Roles;

/// <summary>
/// Makes the database ready before anything else starts: a private server unless a connection string is given. It is
/// registered first and therefore stops last, after the web server has answered its last request.
/// </summary>
internal sealed class DatabaseHostedService(
    DatabaseSettings settings,
    ReadyConnections ready,
    ILoggerFactory loggers
) : IHostedService, IAsyncDisposable
{
    private PrivatePostgresServer? _server;

    public async Task StartAsync(CancellationToken cancellationToken)
    {
        await ConnectAsync(cancellationToken);
        DataFolder.MakeKeysFolder(settings.Folder);
    }

    public Task StopAsync(CancellationToken cancellationToken) =>
        _server?.StopAsync() ?? Task.CompletedTask;

    public ValueTask DisposeAsync() => _server?.DisposeAsync() ?? ValueTask.CompletedTask;

    private async Task ConnectAsync(CancellationToken cancellationToken)
    {
        if (settings.Owner is not null)
        {
            var logger = loggers.CreateLogger<DatabaseHostedService>();
            ready.Set(await GivenDatabase.EnsureAsync(settings, logger, cancellationToken));
            return;
        }

        _server = new PrivatePostgresServer(
            settings.PrivateServer,
            loggers.CreateLogger<PrivatePostgresServer>()
        );
        await _server.StartAsync(cancellationToken);
        ready.Set(await PrivateDatabase.EnsureAsync(_server, cancellationToken));
    }
}
