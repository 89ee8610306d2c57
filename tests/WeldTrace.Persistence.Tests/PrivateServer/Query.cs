using System.Diagnostics;
using Npgsql;

namespace WeldTrace.Persistence.Tests.PrivateServer;

internal static class Query
{
    public static async Task<object?> RunAsync(string connectionString, string statement)
    {
        var once = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false };
        await using var connection = new NpgsqlConnection(once.ConnectionString);
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(statement, connection);
        return await command.ExecuteScalarAsync();
    }

    /// <summary>The SQLSTATE with which the database refuses the statement, or null when it runs.</summary>
    public static async Task<string?> RefusalAsync(string connectionString, string statement)
    {
        try
        {
            await RunAsync(connectionString, statement);
            return null;
        }
        catch (PostgresException refused)
        {
            return refused.SqlState;
        }
    }

    /// <summary>Repeats the statement until the server answers, as the application's retries do.</summary>
    public static async Task<object?> RunWhenBackAsync(string connectionString, string statement)
    {
        var watch = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                return await RunAsync(connectionString, statement);
            }
            catch (NpgsqlException) when (watch.Elapsed < TimeSpan.FromSeconds(20))
            {
                await Task.Delay(50);
            }
        }
    }
}
