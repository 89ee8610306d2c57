using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.Roles;

namespace WeldTrace.Persistence;

public static class Registration
{
    /// <summary>The database, its roles and migration, and contexts that work with the application's own role.</summary>
    public static IServiceCollection AddPersistence(this IServiceCollection services)
    {
        services.AddDatabaseServer<WeldTraceDbContext>(WeldTraceDbContext.AppendOnlyTables);
        services.AddSingleton(provider =>
            ArchiveFolder.In(provider.GetRequiredService<DatabaseSettings>())
        );
        services.AddDbContextFactory<WeldTraceDbContext>(
            (provider, options) =>
                options.UseWeldTrace(
                    provider.GetRequiredService<IDatabaseConnections>().Current.Application,
                    provider.GetRequiredService<ArchiveFolder>()
                )
        );
        return services;
    }
}
