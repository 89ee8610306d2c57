using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace WeldTrace.Persistence.Loading;

/// <summary>
/// Several queries that the database is asked in one round trip. Each is an ordinary query of the context: its command goes into one
/// batch, and <see cref="RoundTripInterceptor"/> gives it its part of the answer to read.
/// </summary>
internal sealed class RoundTrip(WeldTraceDbContext db)
{
    private readonly List<Question> _questions = [];

    /// <summary>Adds a query; its answer can be read after the round trip.</summary>
    public Answer<T> Ask<T>(IQueryable<T> query)
        where T : class
    {
        Answer<T> answer = new();
        _questions.Add(
            new(
                query.CreateDbCommand,
                async cancellation => answer.Rows = await query.ToListAsync(cancellation)
            )
        );
        return answer;
    }

    /// <summary>Asks everything at once.</summary>
    public Task RunAsync(CancellationToken cancellation) =>
        db.Database.CreateExecutionStrategy().ExecuteAsync(RunOnceAsync, cancellation);

    private async Task RunOnceAsync(CancellationToken cancellation)
    {
        await db.Database.OpenConnectionAsync(cancellation);
        try
        {
            await using var batch = db.Database.GetDbConnection().CreateBatch();
            batch.Transaction = db.Database.CurrentTransaction?.GetDbTransaction();
            foreach (var question in _questions)
            {
                await using var command = question.Command();
                Add(batch, command);
            }

            // A session plans each question once and not at each asking, which takes as long as short answers.
            await batch.PrepareAsync(cancellation);
            await using var reader = await batch.ExecuteReaderAsync(cancellation);
            db.Answering = reader;
            foreach (var question in _questions)
            {
                await question.ReadAsync(cancellation);
                await reader.NextResultAsync(cancellation);
            }
        }
        finally
        {
            db.Answering = null;
            await db.Database.CloseConnectionAsync();
        }
    }

    private static void Add(DbBatch batch, DbCommand command)
    {
        var part = batch.CreateBatchCommand();
        part.CommandText = command.CommandText;
        DbParameter[] parameters = [.. command.Parameters.Cast<DbParameter>()];
        // A parameter belongs to one command at a time.
        command.Parameters.Clear();
        part.Parameters.AddRange(parameters);
        batch.BatchCommands.Add(part);
    }

    private sealed record Question(
        Func<DbCommand> Command,
        Func<CancellationToken, Task> ReadAsync
    );
}

/// <summary>What the database answered to one query of a round trip; nothing before it.</summary>
internal sealed class Answer<T>
{
    public IReadOnlyList<T> Rows { get; set; } = [];

    /// <summary>The only row; null when there is none.</summary>
    public T? Single => Rows.SingleOrDefault();
}
