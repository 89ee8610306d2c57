using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;
using WeldTrace.Persistence.Attachments;
using WeldTrace.ProcessLogs;

namespace WeldTrace.Persistence.Archives;

/// <summary>Reads files and process logs wherever they are: in the database, or in the bundle of an archive.</summary>
public static class ArchivedReading
{
    /// <summary>A kept file with its bytes; null when there is none of that hash.</summary>
    /// <param name="db">Context.</param>
    /// <param name="sha256">SHA-256 of the file.</param>
    /// <param name="cancellation">Ends the reading.</param>
    /// <exception cref="FileNotFoundException">It is archived, and the bundle is not in its folder.</exception>
    public static async Task<Attachment?> FindAttachmentAsync(
        this WeldTraceDbContext db,
        string sha256,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var kept = await db
            .Attachments.AsNoTracking()
            .SingleOrDefaultAsync(a => a.Sha256 == sha256, cancellation);
        return kept is { ArchiveId: { } archive }
            ? new Attachment
            {
                Sha256 = kept.Sha256,
                MediaType = kept.MediaType,
                Length = kept.Length,
                Bytes = await BytesAsync(db, archive, kept, cancellation),
            }
            : kept;
    }

    private static Task<byte[]> BytesAsync(
        WeldTraceDbContext db,
        Guid archive,
        Attachment kept,
        CancellationToken cancellation
    ) =>
        db.RequiredArchive()
            .ReadAsync(
                archive,
                path => BundlePaths.IsAttachment(path, kept.Sha256),
                async stream =>
                {
                    var bytes = new byte[kept.Length];
                    await stream.ReadExactlyAsync(bytes, cancellation);
                    return bytes;
                },
                cancellation
            );

    /// <summary>Reads an archived log again from its CSV: the same samples, chunks and levels as were kept.</summary>
    internal static Task<ProcessLog> ReadArchivedLogAsync(
        this WeldTraceDbContext db,
        Guid archive,
        Guid runId,
        LogHeader header,
        CancellationToken cancellation
    ) =>
        db.RequiredArchive()
            .ReadAsync(
                archive,
                path => path == BundlePaths.Log(runId),
                stream => ReadAsync(stream, header, cancellation),
                cancellation
            );

    private static async Task<ProcessLog> ReadAsync(
        Stream csv,
        LogHeader header,
        CancellationToken cancellation
    )
    {
        var mapping = new LogMapping([
            .. header.Columns.Select(c => new ColumnMapping(c.Name, c.Channel, c.Unit, c.Factor)),
        ]);
        var read = await ProcessLogReader.ReadAsync(csv, mapping, null, cancellation);
        return read.Log is { } log && log.Header.CsvSha256 == header.CsvSha256
            ? log with
            {
                Header = header,
            }
            : throw new InvalidDataException(
                "The archived process log does not give the samples that were kept."
            );
    }

    private static ArchiveFolder RequiredArchive(this WeldTraceDbContext db) =>
        db.Archive
        ?? throw new InvalidOperationException("This context does not know where archives are.");
}
