using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Laboratory.Report;

public static class LaboratoryReportEndpoint
{
    public static void MapLaboratoryReport(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/tests/laboratory/{id:guid}/report.pdf",
            (Guid id, HttpContext http, LaboratoryReportReader reader) =>
                http.PrintAsync((site, actor, token) => reader.PrintAsync(id, site, actor, token))
        );
}
