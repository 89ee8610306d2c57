using Npgsql;
using NpgsqlTypes;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Persistence.ProcessLogStore;

/// <summary>
/// Writes the samples of a log by COPY, in the transaction of the save that writes its run: ten times faster than
/// one insert per chunk, and no chunk is held twice.
/// </summary>
internal sealed class ProcessLogCopy(Guid runId, ProcessLog log)
{
    private const string Chunks =
        "COPY process_log_chunks (run_id, ordinal, position, count, minimum, maximum, sum, codec, bytes) FROM STDIN (FORMAT BINARY)";

    private const string Levels =
        "COPY process_log_levels (run_id, ordinal, samples_per_bucket, count, bytes) FROM STDIN (FORMAT BINARY)";

    public async Task WriteAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await WriteChunksAsync(connection, cancellation);
        await WriteLevelsAsync(connection, cancellation);
    }

    private async Task WriteChunksAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using var copy = await connection.BeginBinaryImportAsync(Chunks, cancellation);
        foreach (var chunk in log.Chunks)
        {
            await copy.StartRowAsync(cancellation);
            await copy.WriteAsync(runId, NpgsqlDbType.Uuid, cancellation);
            await copy.WriteAsync(chunk.Ordinal, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(chunk.Index, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(chunk.Count, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(chunk.MinimumAsLogged, NpgsqlDbType.Double, cancellation);
            await copy.WriteAsync(chunk.MaximumAsLogged, NpgsqlDbType.Double, cancellation);
            await copy.WriteAsync(chunk.SumAsLogged, NpgsqlDbType.Double, cancellation);
            await copy.WriteAsync((int)chunk.Codec, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(chunk.Bytes, NpgsqlDbType.Bytea, cancellation);
        }

        await copy.CompleteAsync(cancellation);
    }

    private async Task WriteLevelsAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using var copy = await connection.BeginBinaryImportAsync(Levels, cancellation);
        foreach (var level in log.Pyramid)
        {
            await copy.StartRowAsync(cancellation);
            await copy.WriteAsync(runId, NpgsqlDbType.Uuid, cancellation);
            await copy.WriteAsync(level.Ordinal, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(level.SamplesPerBucket, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(level.Count, NpgsqlDbType.Integer, cancellation);
            await copy.WriteAsync(level.Bytes, NpgsqlDbType.Bytea, cancellation);
        }

        await copy.CompleteAsync(cancellation);
    }
}
