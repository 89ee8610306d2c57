using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;

namespace WeldTrace.Persistence.Roles;

public static class DatabaseRegistration
{
    /// <summary>
    /// Adds the database server, its two roles and the migration at start. Call it before any other hosted service is
    /// added, and add an <see cref="IDbContextFactory{TContext}"/> that uses
    /// <see cref="IDatabaseConnections.Current"/>.
    /// </summary>
    public static IServiceCollection AddDatabaseServer<TContext>(
        this IServiceCollection services,
        IReadOnlyCollection<string> appendOnlyTables
    )
        where TContext : DbContext
    {
        services.AddSingleton(provider => new DatabaseSettings(
            provider.GetRequiredService<IConfiguration>()
        ));
        services.AddSingleton<ReadyConnections>();
        services.AddSingleton<IDatabaseConnections>(provider =>
            provider.GetRequiredService<ReadyConnections>()
        );
        services.AddSingleton(new AppendOnlyTables(appendOnlyTables));
        services.AddHostedService<DatabaseHostedService>();
        services.AddHostedService<SchemaMigrator<TContext>>();
        services.AddHealthChecks().AddCheck<DatabaseHealth>("database");
        return services;
    }
}
