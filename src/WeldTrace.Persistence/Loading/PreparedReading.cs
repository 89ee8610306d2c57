using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using Npgsql;

namespace WeldTrace.Persistence.Loading;

/// <summary>A statement, its parameters, named $1, $2 and so on, and the rows read.</summary>
internal abstract class Statement(string sql, object?[] parameters)
{
    public string Sql => sql;

    public IReadOnlyList<object?> Parameters => parameters;

    /// <summary>Forgets what was read: the database is asked again.</summary>
    public abstract void Clear();

    /// <summary>Takes the row that the reader stands at.</summary>
    public abstract void Read(NpgsqlDataReader reader);
}

/// <inheritdoc cref="Statement"/>
internal sealed class Statement<T>(
    string sql,
    Func<NpgsqlDataReader, T> readRow,
    params object?[] parameters
) : Statement(sql, parameters)
{
    public List<T> Rows { get; } = [];

    public override void Clear() => Rows.Clear();

    public override void Read(NpgsqlDataReader reader) => Rows.Add(readRow(reader));
}

/// <summary>
/// Reads rows without the ORM between, by statements that a session prepares once: for what is asked often and has many or
/// large rows.
/// </summary>
internal static class PreparedReading
{
    /// <summary>All statements in one round trip; each keeps its rows.</summary>
    public static Task ReadPreparedAsync(
        this WeldTraceDbContext db,
        IReadOnlyList<Statement> statements,
        CancellationToken cancellation
    ) =>
        db
            .Database.CreateExecutionStrategy()
            .ExecuteAsync(token => ReadOnceAsync(db, statements, token), cancellation);

    private static async Task ReadOnceAsync(
        WeldTraceDbContext db,
        IReadOnlyList<Statement> statements,
        CancellationToken cancellation
    )
    {
        await db.Database.OpenConnectionAsync(cancellation);
        try
        {
            await using var batch = ((NpgsqlConnection)db.Database.GetDbConnection()).CreateBatch();
            batch.Transaction = (NpgsqlTransaction?)
                db.Database.CurrentTransaction?.GetDbTransaction();
            foreach (var statement in statements)
            {
                batch.BatchCommands.Add(CommandOf(statement));
            }

            await batch.PrepareAsync(cancellation);
            await using var reader = await batch.ExecuteReaderAsync(cancellation);
            foreach (var statement in statements)
            {
                statement.Clear();
                while (await reader.ReadAsync(cancellation))
                {
                    statement.Read(reader);
                }

                await reader.NextResultAsync(cancellation);
            }
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
        }
    }

    private static NpgsqlBatchCommand CommandOf(Statement statement)
    {
        var command = new NpgsqlBatchCommand(statement.Sql);
        foreach (var value in statement.Parameters)
        {
            command.Parameters.Add(ParameterOf(value));
        }

        return command;
    }

    private static NpgsqlParameter ParameterOf(object? value) =>
        value is null
            // The only optional ones are keys.
            ? new NpgsqlParameter
            {
                Value = DBNull.Value,
                NpgsqlDbType = NpgsqlTypes.NpgsqlDbType.Uuid,
            }
            : new NpgsqlParameter { Value = value };
}
