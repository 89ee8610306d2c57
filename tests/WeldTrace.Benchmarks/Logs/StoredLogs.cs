using Microsoft.EntityFrameworkCore;
using WeldTrace.TestSupport.Database;

namespace WeldTrace.Benchmarks.Logs;

internal static class StoredLogs
{
    /// <summary>Bytes on disk of all tables of process logs with their indexes, per log kept.</summary>
    public static Task<double> StoredBytesOfALogAsync(this SiteDatabase database) =>
        database.ReadAsync(async db =>
        {
            var bytes = await db
                .Database.SqlQuery<long>(
                    $"""
                    SELECT pg_total_relation_size('process_logs') + pg_total_relation_size('process_log_chunks')
                        + pg_total_relation_size('process_log_levels') AS "Value"
                    """
                )
                .SingleAsync();
            return (double)bytes / await db.ProcessLogs.CountAsync();
        });
}
