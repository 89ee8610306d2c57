using Npgsql;
using Xunit;

namespace WeldTrace.Persistence.Tests.Upgrades;

/// <summary>What stands in a database, read by PostgreSQL's own means and none of the program's.</summary>
internal sealed class DatabaseFacts(string connectionString)
{
    public const string History = "__EFMigrationsHistory";

    private const string Columns = """
        SELECT table_name || '.' || column_name, data_type || ' ' || is_nullable
            || coalesce(' ' || character_maximum_length, '')
            || CASE is_generated WHEN 'ALWAYS' THEN ' generated' ELSE '' END
        FROM information_schema.columns WHERE table_schema = 'public'
        """;

    private const string Triggers = """
        SELECT c.relname || '.' || t.tgname, pg_get_triggerdef(t.oid)
        FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid WHERE NOT t.tgisinternal
        """;

    private const string Indexes = """
        SELECT tablename || '.' || indexname, indexdef FROM pg_indexes WHERE schemaname = 'public'
        """;

    private const string Constraints = """
        SELECT conrelid::regclass || '.' || conname, pg_get_constraintdef(oid)
        FROM pg_constraint WHERE connamespace = 'public'::regnamespace
        """;

    // Every right that PostgreSQL knows on a table.
    private const string Rights = """
        SELECT c.relname, string_agg(r.name, ' ' ORDER BY r.name)
        FROM pg_class c CROSS JOIN unnest(ARRAY['SELECT', 'INSERT', 'UPDATE', 'DELETE', 'TRUNCATE', 'REFERENCES', 'TRIGGER']) r(name)
        WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p', 'v', 'm')
            AND has_table_privilege(current_user, c.oid, r.name)
        GROUP BY c.relname
        """;

    public Task<SortedDictionary<string, string>> ColumnsAsync() => ReadAsync(Columns);

    public Task<SortedDictionary<string, string>> TriggersAsync() => ReadAsync(Triggers);

    public Task<SortedDictionary<string, string>> IndexesAsync() => ReadAsync(Indexes);

    public Task<SortedDictionary<string, string>> ConstraintsAsync() => ReadAsync(Constraints);

    /// <summary>The rights of whoever this connection signs in.</summary>
    public Task<SortedDictionary<string, string>> RightsAsync() => ReadAsync(Rights);

    /// <summary>The migrations that were applied.</summary>
    public Task<SortedDictionary<string, string>> HistoryAsync() =>
        ReadAsync($"SELECT migration_id, product_version FROM \"{History}\"");

    /// <summary>How many rows each table has, with a SHA-256 sum over the text of all of them in these columns.</summary>
    /// <param name="columns">As <see cref="ColumnsAsync"/> gives them.</param>
    public async Task<SortedDictionary<string, string>> RowsAsync(IEnumerable<string> columns)
    {
        var tables = columns
            .Select(c => c.Split('.'))
            .Where(c => c[0] != History)
            .GroupBy(c => c[0], c => $"\"{c[1]}\"");
        return await ReadAsync(
            string.Join(
                " UNION ALL ",
                tables.Select(t =>
                    $"""
                        SELECT '{t.Key}', count(*) || ' rows ' || coalesce(encode(sha256(convert_to(
                            string_agg(r.row, E'\n' ORDER BY r.row), 'UTF8')), 'hex'), '')
                        FROM (SELECT ROW({string.Join(
                            ", ",
                            t
                        )})::text COLLATE "C" AS row FROM "{t.Key}") r
                        """
                )
            )
        );
    }

    /// <summary>Name and value of each row of a query of two columns.</summary>
    public async Task<SortedDictionary<string, string>> ReadAsync(string query)
    {
        var cancellation = TestContext.Current.CancellationToken;
        var once = new NpgsqlConnectionStringBuilder(connectionString) { Pooling = false };
        await using var connection = new NpgsqlConnection(once.ConnectionString);
        await connection.OpenAsync(cancellation);
        await using var command = new NpgsqlCommand(query, connection);
        await using var reader = await command.ExecuteReaderAsync(cancellation);
        SortedDictionary<string, string> read = new(StringComparer.Ordinal);
        while (await reader.ReadAsync(cancellation))
        {
            read.Add(reader.GetString(0), reader.GetString(1));
        }

        return read;
    }
}
