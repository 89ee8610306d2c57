using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Vessels.Bundle;

public static class BundleEndpoint
{
    public static void MapBundle(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/vessels/{serial}/history.zip",
            async (
                string serial,
                HttpContext http,
                BundleReader reader,
                IDbContextFactory<WeldTraceDbContext> contexts
            ) =>
            {
                var actor = await CurrentActor.GetAsync(contexts, http.User, http.RequestAborted);

                // Made whole before it is sent: a bundle that breaks off in the middle would only look like one.
                var file = new FileStream(
                    Path.Combine(Path.GetTempPath(), Path.GetRandomFileName()),
                    new FileStreamOptions
                    {
                        Mode = FileMode.CreateNew,
                        Access = FileAccess.ReadWrite,
                        Options = FileOptions.DeleteOnClose | FileOptions.Asynchronous,
                        UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
                    }
                );
                if (
                    !await reader.WriteAsync(
                        serial,
                        http.SiteAddress(),
                        actor,
                        file,
                        http.RequestAborted
                    )
                )
                {
                    await file.DisposeAsync();
                    return Results.NotFound();
                }

                file.Position = 0;
                return Results.File(
                    file,
                    "application/zip",
                    $"history-{FileNames.Safe(serial)}.zip"
                );
            }
        );
}
