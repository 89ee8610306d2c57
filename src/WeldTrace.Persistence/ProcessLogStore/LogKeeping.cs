using WeldTrace.Persistence.Attachments;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Persistence.ProcessLogStore;

public static class LogKeeping
{
    /// <summary>Media type of the file of a log as it was brought.</summary>
    public static string MediaTypeOf(LogHeader header)
    {
        ArgumentNullException.ThrowIfNull(header);
        return header.Dialect.Packing switch
        {
            LogPacking.Gzip => "application/gzip",
            LogPacking.Zstd => "application/zstd",
            _ => "text/csv",
        };
    }

    /// <summary>Adds a log to be saved with the next save, and its original bytes when the samples don't give them back.</summary>
    /// <param name="db">Context that holds the record that the log is of.</param>
    /// <param name="ownerId">That record; it has no log yet.</param>
    /// <param name="log">The log.</param>
    /// <param name="original">The bytes as brought.</param>
    /// <param name="cancellation">Ends the looking up.</param>
    public static async Task KeepLogAsync(
        this WeldTraceDbContext db,
        Guid ownerId,
        ProcessLog log,
        byte[] original,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(original);
        if (log.Header.CsvIsOriginal)
        {
            db.AddProcessLog(ownerId, log, null);
            return;
        }

        await db.KeepAsync(
            new Attachment
            {
                Sha256 = log.Header.OriginalSha256,
                MediaType = MediaTypeOf(log.Header),
                Length = original.LongLength,
                Bytes = original,
            },
            cancellation
        );
        db.AddProcessLog(ownerId, log, log.Header.OriginalSha256);
    }
}
