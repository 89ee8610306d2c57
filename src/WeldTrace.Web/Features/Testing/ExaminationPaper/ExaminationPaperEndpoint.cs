using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Testing.ExaminationPaper;

public static class ExaminationPaperEndpoint
{
    public static void MapExaminationPaper(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(
            "/tests/examinations/{id:guid}/report.pdf",
            (Guid id, HttpContext http, ExaminationPaperReader reader) =>
                http.PrintAsync((site, actor, token) => reader.PrintAsync(id, site, actor, token))
        );
}
