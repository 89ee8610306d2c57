using Npgsql;
using WeldTrace.Persistence.Loading;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Persistence.ProcessLogStore;

/// <summary>Reads levels and chunks of one log, each kind in one round trip.</summary>
internal sealed class LogRows(WeldTraceDbContext db, Guid runId, CancellationToken cancellation)
{
    private const string Levels = """
        SELECT ordinal, samples_per_bucket, count, bytes FROM process_log_levels
        WHERE run_id = $1 AND ordinal = ANY($2) AND samples_per_bucket = $3
        """;

    private const string Chunks = """
        SELECT ordinal, position, count, minimum, maximum, sum, codec, bytes FROM process_log_chunks
        WHERE run_id = $1 AND ordinal = ANY($2) AND position = ANY($3)
        """;

    public async Task<IReadOnlyList<PyramidLevel>> LevelsAsync(int[] ordinals, int size)
    {
        Statement<PyramidLevel> levels = new(
            Levels,
            row =>
                new(
                    row.GetInt32(0),
                    row.GetInt32(1),
                    row.GetInt32(2),
                    row.GetFieldValue<byte[]>(3)
                ),
            runId,
            ordinals,
            size
        );
        await db.ReadPreparedAsync([levels], cancellation);
        return levels.Rows;
    }

    public async Task<Dictionary<(int Ordinal, int Position), EncodedChunk>> ChunksAsync(
        int[] ordinals,
        int[] positions
    )
    {
        Statement<EncodedChunk> chunks = new(Chunks, Chunk, runId, ordinals, positions);
        await db.ReadPreparedAsync([chunks], cancellation);
        return chunks.Rows.ToDictionary(chunk => (chunk.Ordinal, chunk.Index));
    }

    private static EncodedChunk Chunk(NpgsqlDataReader row) =>
        new(
            row.GetInt32(0),
            row.GetInt32(1),
            row.GetInt32(2),
            row.GetDouble(3),
            row.GetDouble(4),
            row.GetDouble(5),
            (ChunkCodec)row.GetInt32(6),
            row.GetFieldValue<byte[]>(7)
        );
}
