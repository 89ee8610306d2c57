using WeldTrace.Web.Features.Systems.Histories;
using WeldTrace.Web.Features.Systems.Tokens;
using WeldTrace.Web.Systems;

namespace WeldTrace.Web.Features.Systems;

/// <summary>What other systems of the workshop send and read, each with a token of its own.</summary>
public static class Registration
{
    public static IServiceCollection AddSystems(this IServiceCollection services) =>
        services
            .AddScoped<SystemTokensHandler>()
            .AddScoped<HistoryReader>()
            .AddApiDocument()
            .AddApiLimit();

    public static void MapSystems(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapHistories();
        endpoints.MapOpenApi(ApiDocument.Address);
    }
}
