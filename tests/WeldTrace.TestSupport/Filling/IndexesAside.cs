using Npgsql;

namespace WeldTrace.TestSupport.Filling;

/// <summary>
/// Tables without indexes, triggers and log while they are filled: many rows are written several times as fast, and an index made of
/// all of them at once is as dense as it gets. The tables stay unlogged: a crash of the server would empty them.
/// </summary>
internal sealed class IndexesAside(NpgsqlConnection connection, IReadOnlyList<string> afterwards)
{
    /// <summary>Takes the indexes of some tables away, and remembers how they are made.</summary>
    public static async Task<IndexesAside> PutAsync(NpgsqlConnection connection, string[] tables)
    {
        List<(string Remove, string Make)> indexes = [];
        await using (
            var command = new NpgsqlCommand(
                """
                SELECT coalesce(
                        'ALTER TABLE ' || i.indrelid::regclass || ' DROP CONSTRAINT ' || c.conname,
                        'DROP INDEX ' || i.indexrelid::regclass),
                    coalesce(
                        'ALTER TABLE ' || i.indrelid::regclass || ' ADD CONSTRAINT ' || c.conname || ' ' || pg_get_constraintdef(c.oid),
                        pg_get_indexdef(i.indexrelid))
                FROM pg_index i LEFT JOIN pg_constraint c ON c.conindid = i.indexrelid
                WHERE i.indrelid = ANY ($1::regclass[])
                """,
                connection
            )
            {
                Parameters = { new() { Value = tables } },
            }
        )
        {
            await using var reader = await command.ExecuteReaderAsync();
            while (await reader.ReadAsync())
            {
                indexes.Add((reader.GetString(0), reader.GetString(1)));
            }
        }

        string[] before =
        [
            "SET maintenance_work_mem = '512MB'",
            .. tables.Select(t => $"ALTER TABLE {t} SET UNLOGGED"),
            .. tables.Select(t => $"ALTER TABLE {t} DISABLE TRIGGER USER"),
            .. indexes.Select(i => i.Remove),
        ];
        foreach (var statement in before)
        {
            await ManyVessels.ExecuteAsync(connection, statement);
        }

        return new IndexesAside(
            connection,
            [
                .. indexes.Select(i => i.Make),
                .. tables.Select(t => $"ALTER TABLE {t} ENABLE TRIGGER USER"),
            ]
        );
    }

    /// <summary>Makes them again, and lets the triggers watch.</summary>
    public async Task BringBackAsync()
    {
        foreach (var statement in afterwards)
        {
            await ManyVessels.ExecuteAsync(connection, statement);
        }
    }
}
