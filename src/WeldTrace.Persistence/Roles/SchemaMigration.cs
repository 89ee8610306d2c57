using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql;
using WeldTrace.Persistence.PrivateServer;

namespace WeldTrace.Persistence.Roles;

/// <summary>Brings the structure up to date as the owner, one process at a time, and grants the rights anew.</summary>
public static class SchemaMigration
{
    // "WELDTRAC" read as a big-endian number; any fixed number would do.
    private const long LockNumber = 0x5745_4C44_5452_4143;
    private const int LockPatienceSeconds = 600;

    /// <exception cref="DatabaseStartException">
    /// The database has migrations that this program does not know, or one of this program's can't be done; then none is.
    /// </exception>
    public static async Task RunAsync(
        DbContext context,
        DatabaseConnections connections,
        IReadOnlyCollection<string> appendOnlyTables,
        CancellationToken cancellation
    )
    {
        context.Database.SetConnectionString(connections.Owner);
        await using var turn = await TakeTurnAsync(connections.Owner, cancellation);
        try
        {
            // Without this, a first start logs a failed query that is no fault.
            await context.GetService<IHistoryRepository>().CreateIfNotExistsAsync(cancellation);
            await RequireKnownMigrationsAsync(context, connections, cancellation);
            await MigrateAsync(context, connections, cancellation);
            await TableGrants.ApplyAsync(
                connections,
                SchemasOf(context),
                appendOnlyTables,
                cancellation
            );
        }
        catch (PostgresException full) when (full.SqlState == PostgresErrorCodes.DiskFull)
        {
            throw DatabaseStartException.NoSpaceLeft(connections.ToString(), full);
        }
    }

    // All steps are one transaction, where each would be one of its own: a database half way between two versions is of no use to either.
    private static async Task MigrateAsync(
        DbContext context,
        DatabaseConnections connections,
        CancellationToken cancellation
    )
    {
        var pending = (await context.Database.GetPendingMigrationsAsync(cancellation)).ToList();
        try
        {
            await context
                .Database.CreateExecutionStrategy()
                .ExecuteAsync(token => MigrateInOneTransactionAsync(context, token), cancellation);
        }
        catch (PostgresException refused) when (refused.SqlState != PostgresErrorCodes.DiskFull)
        {
            throw new DatabaseStartException(
                DatabaseStartProblem.UpgradeFailed,
                $"The database could not be brought to this version of WeldTrace, by the steps {pending[0]} to {pending[^1]}: {refused.MessageText}",
                connections.ToString(),
                "Nothing was changed, and the version that wrote it still starts on it. Mend what the database says here, or ask whoever gave you this version, then start it again.",
                refused
            );
        }
    }

    private static async Task MigrateInOneTransactionAsync(
        DbContext context,
        CancellationToken cancellation
    )
    {
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        await context.Database.MigrateAsync(cancellation);
        await transaction.CommitAsync(cancellation);
    }

    private static async Task<NpgsqlConnection> TakeTurnAsync(
        string owner,
        CancellationToken cancellation
    )
    {
        // Without pooling, the end of the session gives the lock back even when this process is killed.
        var session = new NpgsqlConnectionStringBuilder(owner) { Pooling = false };
        var connection = new NpgsqlConnection(session.ConnectionString);
        try
        {
            await connection.OpenAsync(cancellation);
            await using var command = new NpgsqlCommand("SELECT pg_advisory_lock($1)", connection);
            command.Parameters.AddWithValue(LockNumber);
            command.CommandTimeout = LockPatienceSeconds;
            await command.ExecuteNonQueryAsync(cancellation);
            return connection;
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    private static async Task RequireKnownMigrationsAsync(
        DbContext context,
        DatabaseConnections connections,
        CancellationToken cancellation
    )
    {
        var applied = await context.Database.GetAppliedMigrationsAsync(cancellation);
        var unknown = applied.Except(context.Database.GetMigrations()).ToList();
        if (unknown.Count > 0)
        {
            throw new DatabaseStartException(
                DatabaseStartProblem.NewerVersion,
                $"The database was made by a newer version of WeldTrace (it has the step {unknown[^1]}, which this version does not know)",
                connections.ToString(),
                "Start the newer version again, or restore a backup that was made with this version into another data folder. Nothing was changed."
            );
        }
    }

    private static string[] SchemasOf(DbContext context) =>
        [
            .. context
                .Model.GetEntityTypes()
                .Where(type => type.GetTableName() is not null)
                .Select(type => type.GetSchema() ?? "public")
                .Append("public")
                .Distinct(),
        ];
}
