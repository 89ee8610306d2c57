using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Procedures.Sheet;

public static class ProcedureSheetEndpoint
{
    public static void MapProcedureSheet(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/procedures/{id:guid}/sheet.pdf",
            (Guid id, HttpContext http, ProcedureSheetReader reader) =>
                http.PrintAsync((site, actor, token) => reader.PrintAsync(id, site, actor, token))
        );
}
