using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace WeldTrace.Persistence.Roles;

/// <summary>Migrates at start. The context is resolved late: before, there is no connection string to build it with.</summary>
public sealed class SchemaMigrator<TContext>(
    IServiceProvider services,
    IDatabaseConnections connections,
    AppendOnlyTables appendOnly,
    ILogger<SchemaMigrator<TContext>> logger
) : IHostedService
    where TContext : DbContext
{
    public async Task StartAsync(CancellationToken cancellationToken)
    {
        await using var scope = services.CreateAsyncScope();
        var contexts = scope.ServiceProvider.GetRequiredService<IDbContextFactory<TContext>>();
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await SchemaMigration.RunAsync(
            context,
            connections.Current,
            appendOnly.Names,
            cancellationToken
        );
        logger.LogInformation("The structure of the {Database} is up to date", connections.Current);
    }

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
