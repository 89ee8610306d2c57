using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.ProcessLogs;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Welding.ShowRun;

/// <summary>The log of a run as it was brought, byte for byte: written again from its samples, or as it was kept beside them.</summary>
public static class RunOriginalEndpoint
{
    public static void MapRunOriginal(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet("/runs/{id:guid}/log/original", SendAsync);

    private static async Task<IResult> SendAsync(
        Guid id,
        IDbContextFactory<WeldTraceDbContext> contexts,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var run = await db
            .WeldRuns.AsNoTracking()
            .SingleOrDefaultAsync(r => r.Id == id, cancellation);
        var header = await db.FindLogHeaderAsync(id, cancellation);
        if (run?.Log is null || header is null)
        {
            return Results.NotFound();
        }

        if (header.CsvIsOriginal)
        {
            return Results.Redirect(Routes.RunLogCsv(id));
        }

        var hash = await db
            .ProcessLogs.Where(l => l.RunId == id)
            .Select(l => l.OriginalAttachment)
            .SingleAsync(cancellation);
        var kept = await db.FindAttachmentAsync(hash!, cancellation);
        var bytes = new MemoryStream(kept!.Bytes);
        return Results.File(
            hash == header.OriginalSha256 ? bytes : PackedOriginal.Unpack(bytes),
            "application/octet-stream",
            FileNames.Safe(run.Log.FileName)
        );
    }
}
