using Npgsql;

namespace WeldTrace.Persistence.Roles;

/// <summary>Gives the application's role its rights on every table, and less on those that only ever grow.</summary>
public static class TableGrants
{
    private const string HistoryTable = "__EFMigrationsHistory";

    /// <param name="connections">The owner grants, the application's role receives.</param>
    /// <param name="schemas">The schemas that hold the application's tables.</param>
    /// <param name="appendOnly">Names of tables that the application may read and add to, but not change.</param>
    /// <param name="cancellation">Rolls everything back.</param>
    /// <exception cref="ArgumentException">An append-only table does not exist.</exception>
    public static async Task ApplyAsync(
        DatabaseConnections connections,
        IReadOnlyCollection<string> schemas,
        IReadOnlyCollection<string> appendOnly,
        CancellationToken cancellation
    )
    {
        await using var owner = new NpgsqlConnection(connections.Owner);
        await owner.OpenAsync(cancellation);
        await using var transaction = await owner.BeginTransactionAsync(cancellation);
        var tables = await TablesAsync(owner, schemas, cancellation);
        RequireKnown(appendOnly, tables);
        var role = SqlName.Quote(connections.ApplicationRole);
        var statements = schemas
            .SelectMany(schema => OnSchema(SqlName.Quote(schema), role))
            .Concat(
                tables.SelectMany(table => OnTable(table, RightsOn(table.Name, appendOnly), role))
            );
        await using var command = new NpgsqlCommand(
            string.Join(";\n", statements),
            owner,
            transaction
        );
        await command.ExecuteNonQueryAsync(cancellation);
        await transaction.CommitAsync(cancellation);
    }

    private static string RightsOn(string table, IReadOnlyCollection<string> appendOnly) =>
        table == HistoryTable ? "SELECT"
        : appendOnly.Contains(table) ? "SELECT, INSERT"
        : "SELECT, INSERT, UPDATE, DELETE";

    private static string[] OnSchema(string schema, string role) =>
        [
            $"REVOKE CREATE ON SCHEMA {schema} FROM PUBLIC",
            $"GRANT USAGE ON SCHEMA {schema} TO {role}",
            $"GRANT USAGE, SELECT ON ALL SEQUENCES IN SCHEMA {schema} TO {role}",
        ];

    private static string[] OnTable((string Schema, string Name) table, string rights, string role)
    {
        var name = $"{SqlName.Quote(table.Schema)}.{SqlName.Quote(table.Name)}";
        return [$"REVOKE ALL ON {name} FROM PUBLIC, {role}", $"GRANT {rights} ON {name} TO {role}"];
    }

    private static async Task<List<(string Schema, string Name)>> TablesAsync(
        NpgsqlConnection owner,
        IReadOnlyCollection<string> schemas,
        CancellationToken cancellation
    )
    {
        await using var command = new NpgsqlCommand(
            """
            SELECT n.nspname, c.relname
            FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
            WHERE n.nspname = ANY ($1) AND c.relkind IN ('r', 'p', 'v', 'm') AND pg_has_role(c.relowner, 'USAGE')
            """,
            owner
        );
        command.Parameters.AddWithValue(schemas.ToArray());
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        List<(string, string)> tables = [];
        while (await reader.ReadAsync(cancellation))
        {
            tables.Add((reader.GetString(0), reader.GetString(1)));
        }

        return tables;
    }

    private static void RequireKnown(
        IReadOnlyCollection<string> appendOnly,
        List<(string Schema, string Name)> tables
    )
    {
        var missing = appendOnly.Except(tables.Select(table => table.Name)).ToList();
        if (missing.Count > 0)
        {
            throw new ArgumentException(
                $"No such append-only table: {string.Join(", ", missing)}.",
                nameof(appendOnly)
            );
        }
    }
}
