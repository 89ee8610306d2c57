using Microsoft.Extensions.Diagnostics.HealthChecks;
using Npgsql;

namespace WeldTrace.Persistence.Roles;

/// <summary>Healthy when the application's own role gets an answer from the database.</summary>
public sealed class DatabaseHealth(IDatabaseConnections connections) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(
        HealthCheckContext context,
        CancellationToken cancellationToken = default
    )
    {
        try
        {
            await using var connection = new NpgsqlConnection(connections.Current.Application);
            await connection.OpenAsync(cancellationToken);
            await using var command = new NpgsqlCommand("SELECT 1", connection);
            await command.ExecuteScalarAsync(cancellationToken);
            return HealthCheckResult.Healthy();
        }
        catch (Exception fault)
            when (fault is NpgsqlException or InvalidOperationException or TimeoutException)
        {
            return HealthCheckResult.Unhealthy("The database does not answer.");
        }
    }
}
