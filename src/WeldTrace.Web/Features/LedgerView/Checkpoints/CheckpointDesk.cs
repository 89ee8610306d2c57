using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Ledger;
using WeldTrace.Persistence;
using WeldTrace.Persistence.LedgerStore;

namespace WeldTrace.Web.Features.LedgerView.Checkpoints;

/// <summary>Signs the state of the ledger, has it stamped where a service is named, and publishes it.</summary>
public sealed partial class CheckpointDesk(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SiteKeyFolder keys,
    CheckpointSettings settings,
    TimeStampService stamps,
    TimeProvider clock,
    ILogger<CheckpointDesk> logger
)
{
    /// <summary>Takes a checkpoint; null before the site is set up.</summary>
    /// <exception cref="BrokenLedgerException">The ledger does not extend the one signed last.</exception>
    public async Task<CheckpointRow?> TakeAsync(CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var site = await db.Sites.AsNoTracking().SingleOrDefaultAsync(cancellation);
        if (site is null)
        {
            return null;
        }

        var checkpoint = await db.TakeCheckpointAsync(
            keys.Current,
            site.Name,
            clock.GetUtcNow(),
            cancellation
        );
        var stamp = await StampAsync(db, checkpoint, cancellation);
        await PublishAsync(checkpoint, stamp, cancellation);
        return checkpoint;
    }

    private async Task<CheckpointStampRow?> StampAsync(
        WeldTraceDbContext db,
        CheckpointRow checkpoint,
        CancellationToken cancellation
    )
    {
        var kept = await db
            .CheckpointStamps.AsNoTracking()
            .SingleOrDefaultAsync(s => s.TreeSize == checkpoint.TreeSize, cancellation);
        if (kept is not null || settings.TimeStampService is not { } service)
        {
            return kept;
        }

        try
        {
            var stamp = await stamps.StampAsync(checkpoint, service, cancellation);
            db.Add(stamp);
            await db.SaveChangesAsync(cancellation);
            return stamp;
        }
        catch (Exception failure)
            when (failure
                    is HttpRequestException
                        or CryptographicException
                        or DbUpdateException
                        or TaskCanceledException { InnerException: TimeoutException }
            )
        {
            // The checkpoint stands without it, and the next turn asks again.
            LogNotStamped(failure, checkpoint.TreeSize);
            return null;
        }
    }

    private async Task PublishAsync(
        CheckpointRow checkpoint,
        CheckpointStampRow? stamp,
        CancellationToken cancellation
    )
    {
        try
        {
            await CheckpointFiles.PublishAsync(settings.Folder, checkpoint, stamp, cancellation);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            LogNotPublished(failure, checkpoint.TreeSize, settings.Folder);
        }
    }

    [LoggerMessage(
        LogLevel.Warning,
        "The checkpoint of {TreeSize} entries was not stamped; the next turn asks the service again."
    )]
    private partial void LogNotStamped(Exception failure, long treeSize);

    [LoggerMessage(
        LogLevel.Warning,
        "The checkpoint of {TreeSize} entries is kept, but its files could not be written to {Folder}."
    )]
    private partial void LogNotPublished(Exception failure, long treeSize, string folder);
}
