using Microsoft.EntityFrameworkCore;

namespace WeldTrace.Persistence.Attachments;

public static class AttachmentKeeping
{
    /// <summary>Adds a file to be saved with the next save; the same bytes are kept once, under their hash.</summary>
    public static async Task KeepAsync(
        this WeldTraceDbContext db,
        Attachment attachment,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(attachment);
        if (!await db.Attachments.AnyAsync(a => a.Sha256 == attachment.Sha256, cancellation))
        {
            db.Add(attachment);
        }
    }
}
