using WeldTrace.Web.Features.Findings.ListFindings;
using WeldTrace.Web.Features.Findings.ReportFinding;
using WeldTrace.Web.Features.Findings.ShowFinding;

namespace WeldTrace.Web.Features.Findings;

public static class Registration
{
    public static IServiceCollection AddFindings(this IServiceCollection services) =>
        services
            .AddScoped<ListFindingsHandler>()
            .AddScoped<ShowFindingHandler>()
            .AddScoped<DecideFindingHandler>()
            .AddScoped<ReportFindingHandler>();

    public static void MapFindings(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapFindingsCsv();
}
