using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Findings.Report;

public static class FindingReportEndpoint
{
    public static void MapFindingReport(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/findings/{id:guid}/report.pdf",
            (Guid id, HttpContext http, FindingReportReader reader) =>
                http.PrintAsync((site, actor, token) => reader.PrintAsync(id, site, actor, token))
        );
}
