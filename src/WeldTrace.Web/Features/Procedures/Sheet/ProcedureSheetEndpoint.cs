using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.Procedures.Sheet;

public static class ProcedureSheetEndpoint
{
    public static void MapProcedureSheet(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/procedures/{id:guid}/sheet.pdf",
            async (
                Guid id,
                HttpContext http,
                ProcedureSheetReader reader,
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
