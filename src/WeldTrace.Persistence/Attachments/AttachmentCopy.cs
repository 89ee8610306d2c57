using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Npgsql;
using NpgsqlTypes;

namespace WeldTrace.Persistence.Attachments;

/// <summary>Writes new files by COPY in the transaction of the save that names them, before the save waits for anything else.</summary>
internal sealed class AttachmentCopy(IReadOnlyList<Attachment> files)
{
    private const string Command =
        "COPY attachments (sha256, media_type, length, bytes) FROM STDIN (FORMAT BINARY)";

    /// <summary>The new files of a context; it no longer inserts them itself.</summary>
    public static AttachmentCopy Of(ChangeTracker tracker)
    {
        var added = tracker.Entries<Attachment>().Where(e => e.State == EntityState.Added).ToList();
        added.ForEach(e => e.State = EntityState.Unchanged);
        return new AttachmentCopy([.. added.Select(e => e.Entity)]);
    }

    public async Task WriteAsync(NpgsqlConnection connection, CancellationToken cancellation)
    {
        if (files.Count == 0)
        {
            return;
        }

        await using var copy = await connection.BeginBinaryImportAsync(Command, cancellation);
        foreach (var file in files)
        {
            await copy.StartRowAsync(cancellation);
            await copy.WriteAsync(file.Sha256, NpgsqlDbType.Char, cancellation);
            await copy.WriteAsync(file.MediaType, NpgsqlDbType.Varchar, cancellation);
            await copy.WriteAsync(file.Length, NpgsqlDbType.Bigint, cancellation);
            await copy.WriteAsync(file.Bytes, NpgsqlDbType.Bytea, cancellation);
        }

        await copy.CompleteAsync(cancellation);
    }
}
