using Npgsql;
using WeldTrace.Persistence.PrivateServer;

namespace WeldTrace.Persistence.Roles;

/// <summary>The application's database on its private server.</summary>
public static class PrivateDatabase
{
    public const string Name = "weldtrace";
    public const string ApplicationRoleName = "weldtrace_app";
    private const int OwnerSessions = 10;
    private const int ApplicationSessions = 80;

    /// <summary>Makes database and role where they are missing.</summary>
    public static async Task<DatabaseConnections> EnsureAsync(
        PrivatePostgresServer server,
        CancellationToken cancellation
    )
    {
        await CreateIfMissingAsync(server.OwnerConnectionString("postgres"), cancellation);
        var connections = new DatabaseConnections(
            Limit(server.OwnerConnectionString(Name), OwnerSessions),
            Limit(
                server.ConnectionString(Name, ApplicationRoleName, server.ApplicationPassword()),
                ApplicationSessions
            )
        );
        await ApplicationRole.EnsureAsync(connections, cancellation);
        return connections;
    }

    private static string Limit(string connection, int sessions) =>
        new NpgsqlConnectionStringBuilder(connection) { MaxPoolSize = sessions }.ConnectionString;

    private static async Task CreateIfMissingAsync(string owner, CancellationToken cancellation)
    {
        var once = new NpgsqlConnectionStringBuilder(owner) { Pooling = false };
        await using var connection = new NpgsqlConnection(once.ConnectionString);
        await connection.OpenAsync(cancellation);
        await using var look = new NpgsqlCommand(
            "SELECT 1 FROM pg_database WHERE datname = $1",
            connection
        );
        look.Parameters.AddWithValue(Name);
        if (await look.ExecuteScalarAsync(cancellation) is null)
        {
            await using var create = new NpgsqlCommand($"CREATE DATABASE {Name}", connection);
            await create.ExecuteNonQueryAsync(cancellation);
        }
    }
}
