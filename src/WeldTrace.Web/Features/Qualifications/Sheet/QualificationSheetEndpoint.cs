using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Qualifications.Sheet;

public static class QualificationSheetEndpoint
{
    public static void MapQualificationSheet(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/procedures/qualifications/{id:guid}/record.pdf",
            async (
                Guid id,
                HttpContext http,
                QualificationSheetReader reader,
                IDbContextFactory<WeldTraceDbContext> contexts
            ) =>
            {
                var actor = await CurrentActor.GetAsync(contexts, http.User, http.RequestAborted);
                var pdf = await reader.PrintAsync(
                    id,
                    http.SiteAddress(),
                    actor,
                    http.RequestAborted
                );
                return pdf is null ? Results.NotFound() : Results.File(pdf, "application/pdf");
            }
        );
}
