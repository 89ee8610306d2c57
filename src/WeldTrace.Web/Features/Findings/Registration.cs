using WeldTrace.Web.Features.Findings.Contain;
using WeldTrace.Web.Features.Findings.Figures;
using WeldTrace.Web.Features.Findings.ListFindings;
using WeldTrace.Web.Features.Findings.Report;
using WeldTrace.Web.Features.Findings.ReportFinding;
using WeldTrace.Web.Features.Findings.ShowFinding;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Findings;

public static class Registration
{
    public static IServiceCollection AddFindings(this IServiceCollection services) =>
        services
            .AddScoped<ListFindingsHandler>()
            .AddScoped<ShowFindingHandler>()
            .AddScoped<DecideFindingHandler>()
            .AddScoped<FindingActsHandler>()
            .AddScoped<ContainHandler>()
            .AddScoped<FiguresReader>()
            .AddScoped<IBookChapters, FindingReportReader>()
            .AddScoped<FindingReportReader>()
            .AddScoped<ReportFindingHandler>();

    public static void MapFindings(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapFindingsCsv();
        endpoints.MapContainmentCsv();
        endpoints.MapFindingReport();
    }
}
