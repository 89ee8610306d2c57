using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Welding;
using WeldTrace.Persistence;
using WeldTrace.Web.Files;

namespace WeldTrace.Web.Features.Welding.BringLog;

/// <summary>Receives the file of a process log; nothing is recorded yet.</summary>
public sealed class LogUploadHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    StagedLogs staged
)
{
    private const int NoSpaceLeft = 28;

    /// <summary>What is said when nothing was chosen.</summary>
    public static Refusal NoFile { get; } =
        new("no-file", "No file was chosen. Choose the CSV file that the machine wrote.");

    /// <summary>What is said when the server's disk is full.</summary>
    public static Refusal DiskFull { get; } =
        new(
            "disk-full",
            "The disk of the server is full, so the file was not kept. Make room on the disk, then bring the file again."
        );

    /// <summary>The run; null when there is none.</summary>
    public async Task<WeldRun?> FindAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.WeldRuns.AsNoTracking().SingleOrDefaultAsync(r => r.Id == id, cancellation);
    }

    /// <param name="runId">Run that the log is of.</param>
    /// <param name="fileName">Name of the file as the browser says.</param>
    /// <param name="content">The file, read once.</param>
    /// <param name="announcedBytes">Length that the request announced, if any: what is too long is refused unread.</param>
    /// <param name="actor">Who brings it.</param>
    /// <param name="cancellation">Ends the copying and removes what was copied.</param>
    public async Task<Outcome<StagedLog>> HandleAsync(
        Guid runId,
        string? fileName,
        Stream content,
        long? announcedBytes,
        Actor actor,
        CancellationToken cancellation
    )
    {
        if (announcedBytes > StagedLogs.MostBytes)
        {
            return StagedLogs.TooLarge;
        }

        if (await FindAsync(runId, cancellation) is not { } run)
        {
            return new Refusal("run", "There is no such run.");
        }

        if (run.AwaitsLog(actor) is { IsAccepted: false } refused)
        {
            return refused.Refusals.ToList();
        }

        if (string.IsNullOrEmpty(fileName))
        {
            return NoFile;
        }

        try
        {
            return await staged.KeepAsync(
                runId,
                fileName,
                content,
                StagedLogs.MostBytes,
                cancellation
            );
        }
        catch (IOException full) when (full.HResult == NoSpaceLeft)
        {
            return DiskFull;
        }
    }
}
