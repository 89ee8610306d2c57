using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.Report;

public static class TestReportEndpoint
{
    public static void MapTestReports(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapGet("/tests/leak/{id:guid}/report.pdf", PrintAsync);
        endpoints.MapGet("/tests/pressure/{id:guid}/report.pdf", PrintAsync);
    }

    private static Task<IResult> PrintAsync(Guid id, HttpContext http, TestReportReader reader) =>
        http.PrintAsync((site, actor, token) => reader.PrintAsync(id, site, actor, token));
}
