using Npgsql;
using WeldTrace.Persistence.PrivateServer;

namespace WeldTrace.Persistence.Roles;

/// <summary>Makes the role under which the application reads and writes, without any right over the structure.</summary>
public static class ApplicationRole
{
    /// <summary>Creates the role of <see cref="DatabaseConnections.Application"/>, or mends its password.</summary>
    /// <exception cref="DatabaseStartException">The owner may not create roles.</exception>
    public static async Task EnsureAsync(
        DatabaseConnections connections,
        CancellationToken cancellation
    )
    {
        var wanted = new NpgsqlConnectionStringBuilder(connections.Application);
        await using var owner = new NpgsqlConnection(connections.Owner);
        await owner.OpenAsync(cancellation);
        var verb = await ExistsAsync(owner, wanted.Username!, cancellation) ? "ALTER" : "CREATE";
        if (verb == "ALTER" && await CanLogInAsync(connections.Application, cancellation))
        {
            return;
        }

        try
        {
            await SetPasswordAsync(owner, verb, wanted, cancellation);
        }
        catch (PostgresException refused) when (IsMadeMeanwhile(refused))
        {
            // Another node made the same role with the same password between the look and the leap.
        }
        catch (PostgresException refused)
            when (refused.SqlState == PostgresErrorCodes.InsufficientPrivilege)
        {
            throw NotAllowed(connections, wanted.Username!, refused);
        }
    }

    /// <summary>Refuses a role that could get round the rights it is given.</summary>
    /// <exception cref="DatabaseStartException">The role is the owner, a superuser, or may act as the owner.</exception>
    public static async Task RequireNarrowAsync(
        DatabaseConnections connections,
        CancellationToken cancellation
    )
    {
        await using var owner = new NpgsqlConnection(connections.Owner);
        await owner.OpenAsync(cancellation);
        await using var command = new NpgsqlCommand(
            """
            SELECT r.rolsuper OR pg_has_role(r.oid, current_user, 'MEMBER')
            FROM pg_roles r WHERE r.rolname = $1
            """,
            owner
        );
        command.Parameters.AddWithValue(connections.ApplicationRole);
        if (await command.ExecuteScalarAsync(cancellation) is true)
        {
            throw new DatabaseStartException(
                DatabaseStartProblem.ApplicationRoleMissing,
                $"The application's user {connections.ApplicationRole} is the owner or a superuser, so that signed records would not be protected",
                connections.ToString(),
                "Name a user without such rights in ConnectionStrings:WeldTraceApp."
            );
        }
    }

    private static async Task<bool> ExistsAsync(
        NpgsqlConnection owner,
        string role,
        CancellationToken cancellation
    )
    {
        await using var command = new NpgsqlCommand(
            "SELECT 1 FROM pg_roles WHERE rolname = $1",
            owner
        );
        command.Parameters.AddWithValue(role);
        return await command.ExecuteScalarAsync(cancellation) is not null;
    }

    private static async Task<bool> CanLogInAsync(
        string connectionString,
        CancellationToken cancellation
    )
    {
        var once = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false };
        await using var connection = new NpgsqlConnection(once.ConnectionString);
        try
        {
            await connection.OpenAsync(cancellation);
            return true;
        }
        catch (PostgresException)
        {
            return false;
        }
    }

    private static async Task SetPasswordAsync(
        NpgsqlConnection owner,
        string verb,
        NpgsqlConnectionStringBuilder wanted,
        CancellationToken cancellation
    )
    {
        var verifier = ScramVerifier.Create(wanted.Password!);
        await using var command = new NpgsqlCommand(
            $"{verb} ROLE {SqlName.Quote(wanted.Username!)} LOGIN NOCREATEDB NOCREATEROLE NOINHERIT PASSWORD '{verifier}'",
            owner
        );
        await command.ExecuteNonQueryAsync(cancellation);
    }

    private static bool IsMadeMeanwhile(PostgresException refused) =>
        refused.SqlState is PostgresErrorCodes.DuplicateObject or PostgresErrorCodes.UniqueViolation
        || refused.MessageText.Contains("tuple concurrently updated", StringComparison.Ordinal);

    private static DatabaseStartException NotAllowed(
        DatabaseConnections connections,
        string role,
        PostgresException refused
    ) =>
        new(
            DatabaseStartProblem.ApplicationRoleMissing,
            $"The user of ConnectionStrings:WeldTrace may not make the application's own role {role}",
            connections.ToString(),
            $"Have an administrator run CREATE ROLE {role} LOGIN PASSWORD '...'; and give that user's connection string in ConnectionStrings:WeldTraceApp. Or allow it with: ALTER ROLE (the owner) CREATEROLE.",
            refused
        );
}
