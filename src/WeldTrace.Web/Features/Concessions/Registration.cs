using WeldTrace.Web.Features.Concessions.Ask;
using WeldTrace.Web.Features.Concessions.List;
using WeldTrace.Web.Features.Concessions.Show;

namespace WeldTrace.Web.Features.Concessions;

public static class Registration
{
    public static IServiceCollection AddConcessions(this IServiceCollection services) =>
        services
            .AddScoped<AskConcessionHandler>()
            .AddScoped<ConcessionListReader>()
            .AddScoped<ConcessionHandler>();

    public static void MapConcessions(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapConcessionCsv();
}
