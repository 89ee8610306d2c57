using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence.Archives;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Persistence.ProcessLogStore;

/// <summary>Keeps process logs beside their runs: written in the save that writes the run, never changed.</summary>
public static class ProcessLogStorage
{
    /// <summary>Adds the rows of a log; they are written with the records of the next save, in its transaction.</summary>
    /// <param name="db">Context that holds the run.</param>
    /// <param name="runId">Run that the log is of; it has none yet.</param>
    /// <param name="log">The log.</param>
    /// <param name="originalAttachment">SHA-256 of the kept original, when the samples do not give it back byte for byte.</param>
    public static void AddProcessLog(
        this WeldTraceDbContext db,
        Guid runId,
        ProcessLog log,
        string? originalAttachment
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(log);
        db.Add(
            new ProcessLogRow
            {
                RunId = runId,
                Header = HeaderJson.Write(log.Header),
                OriginalAttachment = originalAttachment,
            }
        );
        db.CopyWithNextSave(new ProcessLogCopy(runId, log));
    }

    /// <summary>Everything about a run's log but its samples; null when it has none.</summary>
    public static async Task<LogHeader?> FindLogHeaderAsync(
        this WeldTraceDbContext db,
        Guid runId,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var json = await db
            .ProcessLogs.Where(l => l.RunId == runId)
            .Select(l => l.Header)
            .SingleOrDefaultAsync(cancellation);
        return json is null ? null : HeaderJson.Read(json);
    }

    /// <summary>A run's log as it was kept; null when it has none.</summary>
    public static async Task<ProcessLog?> FindProcessLogAsync(
        this WeldTraceDbContext db,
        Guid runId,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var kept = await db
            .ProcessLogs.AsNoTracking()
            .SingleOrDefaultAsync(l => l.RunId == runId, cancellation);
        return kept switch
        {
            null => null,
            { ArchiveId: { } archive } => await db.ReadArchivedLogAsync(
                archive,
                runId,
                HeaderJson.Read(kept.Header),
                cancellation
            ),
            _ => new ProcessLog(
                HeaderJson.Read(kept.Header),
                await db.LoadLogChunksAsync(runId, cancellation),
                await db.LoadLogLevelsAsync(runId, cancellation)
            ),
        };
    }

    /// <summary>The samples: by index, and within one index by ordinal.</summary>
    public static async Task<IReadOnlyList<EncodedChunk>> LoadLogChunksAsync(
        this WeldTraceDbContext db,
        Guid runId,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var rows = await db
            .ProcessLogChunks.AsNoTracking()
            .Where(c => c.RunId == runId)
            .OrderBy(c => c.Position)
            .ThenBy(c => c.Ordinal)
            .ToListAsync(cancellation);
        return [.. rows.Select(Chunk)];
    }

    /// <summary>The levels for charts: by column and bucket size.</summary>
    public static async Task<IReadOnlyList<PyramidLevel>> LoadLogLevelsAsync(
        this WeldTraceDbContext db,
        Guid runId,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var rows = await db
            .ProcessLogLevels.AsNoTracking()
            .Where(l => l.RunId == runId)
            .OrderBy(l => l.Ordinal)
            .ThenBy(l => l.SamplesPerBucket)
            .ToListAsync(cancellation);
        return [.. rows.Select(Level)];
    }

    internal static EncodedChunk Chunk(ProcessLogChunkRow row) =>
        new(
            row.Ordinal,
            row.Position,
            row.Count,
            row.Minimum,
            row.Maximum,
            row.Sum,
            (ChunkCodec)row.Codec,
            row.Bytes
        );

    internal static PyramidLevel Level(ProcessLogLevelRow row) =>
        new(row.Ordinal, row.SamplesPerBucket, row.Count, row.Bytes);
}
