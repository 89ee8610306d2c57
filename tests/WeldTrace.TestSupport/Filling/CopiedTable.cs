using System.Buffers.Binary;
using Npgsql;

namespace WeldTrace.TestSupport.Filling;

/// <summary>Rows of one table, read and written by PostgreSQL's binary COPY.</summary>
internal sealed class CopiedTable(string name, IReadOnlyList<CopiedColumn> columns)
{
    /// <summary>Signature, flags and length of the extension that every binary COPY begins with.</summary>
    private static readonly byte[] Head =
    [
        .. "PGCOPY\n"u8,
        0xFF,
        .. "\r\n\0"u8,
        .. new byte[2 * sizeof(int)],
    ];

    private static readonly byte[] End = [0xFF, 0xFF];

    public string Name => name;

    public IReadOnlyList<CopiedColumn> Columns => columns;

    private string List => string.Join(", ", columns.Select(c => $"\"{c.Name}\""));

    public static async Task<CopiedTable> FindAsync(NpgsqlConnection connection, string name)
    {
        await using var command = new NpgsqlCommand(
            """
            SELECT c.column_name, c.data_type, EXISTS (
                SELECT FROM pg_index i JOIN pg_attribute a ON a.attrelid = i.indrelid AND a.attnum = i.indkey[0]
                WHERE i.indrelid = c.table_name::regclass AND i.indisunique AND NOT i.indisprimary AND i.indnkeyatts = 1
                    AND i.indpred IS NULL AND a.attname = c.column_name)
            FROM information_schema.columns c
            WHERE c.table_schema = 'public' AND c.table_name = $1 AND c.is_generated = 'NEVER'
            ORDER BY c.ordinal_position
            """,
            connection
        )
        {
            Parameters = { new() { Value = name } },
        };
        await using var reader = await command.ExecuteReaderAsync();
        List<CopiedColumn> columns = [];
        while (await reader.ReadAsync())
        {
            columns.Add(new(reader.GetString(0), reader.GetString(1), reader.GetBoolean(2)));
        }

        return new CopiedTable(name, columns);
    }

    /// <summary>The rows for which a condition holds, as they go over the wire.</summary>
    public async Task<IReadOnlyList<byte[]>> ReadAsync(NpgsqlConnection connection, string where)
    {
        await using var copy = await connection.BeginRawBinaryCopyAsync(
            $"COPY (SELECT {List} FROM {name} WHERE {where}) TO STDOUT (FORMAT BINARY)"
        );
        using MemoryStream all = new();
        await copy.CopyToAsync(all);
        return [.. Rows(all.ToArray())];
    }

    /// <summary>Writes the copies of some rows.</summary>
    /// <param name="connection">Where to.</param>
    /// <param name="rows">Rows that are copied together.</param>
    /// <param name="copies">How many times.</param>
    /// <param name="between">Copies between two rows of the same one.</param>
    /// <returns>How many rows were written.</returns>
    public async Task<long> WriteAsync(
        NpgsqlConnection connection,
        IReadOnlyList<CopiedRow> rows,
        long copies,
        int between = 0
    )
    {
        await using var copy = await connection.BeginRawBinaryCopyAsync(
            $"COPY {name} ({List}) FROM STDIN (FORMAT BINARY)"
        );
        await using BufferedStream buffered = new(copy, 1 << 16);
        await buffered.WriteAsync(Head);
        for (var last = 0L; last < copies + ((rows.Count - 1L) * between); last++)
        {
            for (var i = 0; i < rows.Count; i++)
            {
                if (last - ((long)i * between) is var n && n >= 0 && n < copies)
                {
                    rows[i].Write(n, buffered);
                }
            }
        }

        await buffered.WriteAsync(End);
        return copies * rows.Count;
    }

    private static IEnumerable<byte[]> Rows(byte[] bytes)
    {
        var at = Head.Length;
        while (BinaryPrimitives.ReadInt16BigEndian(bytes.AsSpan(at)) is var fields and >= 0)
        {
            var end = at + sizeof(short);
            for (var i = 0; i < fields; i++)
            {
                var length = BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(end));
                end += sizeof(int) + Math.Max(0, length);
            }

            yield return bytes[at..end];
            at = end;
        }
    }
}
