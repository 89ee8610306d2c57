using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Archives;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Archive;

/// <summary>The bundle of an archive, in parts where they are asked for.</summary>
public static class ArchivedBundleEndpoint
{
    public static void MapArchivedBundle(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet("/archive/{id:guid}/history.zip", SendAsync);

    private static async Task<IResult> SendAsync(
        Guid id,
        IDbContextFactory<WeldTraceDbContext> contexts,
        ArchiveFolder folder,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var archive = await db
            .VesselArchives.AsNoTracking()
            .SingleOrDefaultAsync(a => a.Id == id, cancellation);
        return archive is not null && folder.Find(id) is { } bundle
            ? Results.File(
                bundle,
                "application/zip",
                $"history-{FileNames.Safe(archive.VesselSerial)}.zip",
                archive.At,
                new EntityTagHeaderValue($"\"{archive.Bundle.Hash}\""),
                enableRangeProcessing: true
            )
            : Results.NotFound();
    }
}
