using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Qualifications.Sheet;

public static class QualificationSheetEndpoint
{
    public static void MapQualificationSheet(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/procedures/qualifications/{id:guid}/record.pdf",
            (Guid id, HttpContext http, QualificationSheetReader reader) =>
                http.PrintAsync((site, actor, token) => reader.PrintAsync(id, site, actor, token))
        );
}
