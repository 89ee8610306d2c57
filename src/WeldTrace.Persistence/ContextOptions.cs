using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Npgsql;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.Loading;

namespace WeldTrace.Persistence;

/// <summary>The one way in which a context is set up, in the application, in tools and in tests.</summary>
public static class ContextOptions
{
    private const int Retries = 4;
    private static readonly TimeSpan LongestRetryDelay = TimeSpan.FromSeconds(3);

    /// <param name="options">Options of the context.</param>
    /// <param name="connectionString">Database and role.</param>
    /// <param name="archive">Where archived bundles are; null for a context that reads none.</param>
    public static TBuilder UseWeldTrace<TBuilder>(
        this TBuilder options,
        string connectionString,
        ArchiveFolder? archive = null
    )
        where TBuilder : DbContextOptionsBuilder
    {
        if (archive is not null)
        {
            ((IDbContextOptionsBuilderInfrastructure)options).AddOrUpdateExtension(
                new ArchiveOption(archive)
            );
        }

        options
            .UseNpgsql(
                WithoutCompilation(connectionString),
                npgsql => npgsql.EnableRetryOnFailure(Retries, LongestRetryDelay, null)
            )
            .UseSnakeCaseNamingConvention()
            // All migrations are done in one transaction, under a lock of our own.
            .ConfigureWarnings(w => w.Ignore(RelationalEventId.MigrationsUserTransactionWarning))
            .AddInterceptors(RoundTripInterceptor.Instance);
        return options;
    }

    // Compiling a long query takes the server ten times as long as answering it, since every answer here is short.
    private static string WithoutCompilation(string connectionString)
    {
        var connection = new NpgsqlConnectionStringBuilder(connectionString);
        connection.Options ??= "-c jit=off";
        return connection.ConnectionString;
    }
}
