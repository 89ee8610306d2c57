using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.SectionReport;

public static class SectionReportEndpoint
{
    public static void MapSectionReport(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/tests/sections/{id:guid}/report.pdf",
            (Guid id, HttpContext http, SectionReportReader reader) =>
                http.PrintAsync((site, actor, token) => reader.PrintAsync(id, site, actor, token))
        );
}
