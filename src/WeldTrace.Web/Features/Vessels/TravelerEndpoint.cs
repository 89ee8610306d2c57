using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Web.Features.Vessels.Traveler;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Vessels;

public static class TravelerEndpoint
{
    public static void MapTraveler(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/vessels/{serial}/traveler.pdf",
            async (
                string serial,
                HttpContext http,
                TravelerReader reader,
                IDbContextFactory<WeldTraceDbContext> contexts
            ) =>
            {
                var actor = await CurrentActor.GetAsync(contexts, http.User, http.RequestAborted);
                var pdf = await reader.PrintAsync(
                    serial,
                    http.SiteAddress(),
                    actor,
                    http.RequestAborted
                );
                return pdf is null
                    ? Results.NotFound()
                    : Results.File(pdf, "application/pdf", enableRangeProcessing: true);
            }
        );
}
