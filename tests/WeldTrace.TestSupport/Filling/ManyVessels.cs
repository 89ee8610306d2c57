using Npgsql;

namespace WeldTrace.TestSupport.Filling;

/// <summary>
/// Fills a database with copies of one vessel and everything recorded about it, by binary COPY. They are rows only: nothing of them
/// stands in the ledger.
/// </summary>
public static class ManyVessels
{
    /// <param name="owner">Connection of the database's owner: the application may not write past its ledger.</param>
    /// <param name="filling">What to fill it with.</param>
    /// <returns>How many rows were written.</returns>
    public static async Task<long> AddAsync(string owner, Filling filling)
    {
        ArgumentNullException.ThrowIfNull(filling);
        await using var connection = new NpgsqlConnection(owner);
        await connection.OpenAsync();
        var vessel = await VesselAsync(connection, filling.Serial);
        List<(CopiedTable Table, IReadOnlyList<byte[]> Rows)> parts = [];
        var tables = await TablesAsync(connection, vessel);
        foreach (
            var (name, where) in tables.Where(t =>
                t.Name == "vessels" || filling.Tables?.Contains(t.Name) != false
            )
        )
        {
            var table = await CopiedTable.FindAsync(connection, name);
            if (await table.ReadAsync(connection, where) is { Count: > 0 } rows)
            {
                parts.Add((table, rows));
            }
        }

        var ids = new Dictionary<Guid, Func<long, long>>();
        foreach (var id in parts.SelectMany(p => p.Rows.Select(r => IdOf(p.Table, r))))
        {
            ids[id] = n => n;
        }

        foreach (var shared in filling.Shared)
        {
            ids[shared.Id] = shared.Which;
        }

        var written = await SharedAsync(connection, filling, ids);
        var aside = await IndexesAside.PutAsync(connection, [.. parts.Select(p => p.Table.Name)]);
        foreach (var (table, rows) in parts)
        {
            CopiedRow[] copied =
            [
                .. rows.Select(
                    (r, i) => new CopiedRow(r, table.Columns, ids, filling, (i, rows.Count))
                ),
            ];
            written += await table.WriteAsync(connection, copied, filling.Count, filling.Between);
        }

        foreach (var statement in filling.Then)
        {
            await ExecuteAsync(connection, statement);
        }

        await aside.BringBackAsync();

        // What the server does by itself in the course of years: statistics, visible pages, indexes without a list of things to do.
        await ExecuteAsync(connection, "VACUUM ANALYZE");
        return written;
    }

    internal static async Task ExecuteAsync(NpgsqlConnection connection, string statement)
    {
        await using var command = new NpgsqlCommand(statement, connection) { CommandTimeout = 0 };
        await command.ExecuteNonQueryAsync();
    }

    // A shared record that names the vessel names a copy of it, which keeps it away from the vessel itself.
    private static async Task<long> SharedAsync(
        NpgsqlConnection connection,
        Filling filling,
        Dictionary<Guid, Func<long, long>> all
    )
    {
        var written = 0L;
        foreach (var kind in filling.Shared.Where(s => s.Table is not null).GroupBy(s => s.Table!))
        {
            var table = await CopiedTable.FindAsync(connection, kind.Key);
            foreach (var (i, shared) in kind.Index())
            {
                var rows = await table.ReadAsync(connection, $"id = '{shared.Id}'");
                var ids = new Dictionary<Guid, Func<long, long>>(all) { [shared.Id] = n => n };
                // Unique marks are counted through, over all records of the table.
                written += await table.WriteAsync(
                    connection,
                    [new CopiedRow(rows[0], table.Columns, ids, filling, (i, kind.Count()))],
                    Enumerable.Range(0, filling.Count).Max(n => shared.Which(n)) + 1
                );
            }
        }

        return written;
    }

    private static async Task<Guid> VesselAsync(NpgsqlConnection connection, string serial)
    {
        await using var command = new NpgsqlCommand(
            "SELECT id FROM vessels WHERE serial = $1",
            connection
        )
        {
            Parameters = { new() { Value = serial } },
        };
        return await command.ExecuteScalarAsync() is Guid id
            ? id
            : throw new ArgumentException($"There is no vessel {serial}.", nameof(serial));
    }

    /// <summary>The tables that hold something of a vessel, each with the condition that finds it.</summary>
    private static async Task<IReadOnlyList<(string Name, string Where)>> TablesAsync(
        NpgsqlConnection connection,
        Guid vessel
    )
    {
        await using var command = new NpgsqlCommand(
            """
            SELECT c.table_name FROM information_schema.columns c JOIN information_schema.tables t USING (table_schema, table_name)
            WHERE c.table_schema = 'public' AND t.table_type = 'BASE TABLE' AND c.column_name = 'vessel_id'
            ORDER BY 1
            """,
            connection
        );
        List<(string, string)> tables =
        [
            ("vessels", $"id = '{vessel}'"),
            ("signatures", $"vessels @> '[\"{vessel}\"]'"),
        ];
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync())
        {
            tables.Add((reader.GetString(0), $"vessel_id = '{vessel}'"));
        }

        return tables;
    }

    // Every record's table begins with its id, or has it somewhere; the field is found by its name.
    private static Guid IdOf(CopiedTable table, byte[] row)
    {
        var at = sizeof(short);
        foreach (var column in table.Columns)
        {
            var length = System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(row.AsSpan(at));
            at += sizeof(int);
            if (column.Name == "id")
            {
                return new Guid(row.AsSpan(at, length), bigEndian: true);
            }

            at += Math.Max(0, length);
        }

        throw new InvalidOperationException("A table of a vessel's records has no id.");
    }
}
