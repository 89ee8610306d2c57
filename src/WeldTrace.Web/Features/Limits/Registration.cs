using WeldTrace.Web.Features.Limits.Enter;
using WeldTrace.Web.Features.Limits.List;
using WeldTrace.Web.Features.Limits.Show;

namespace WeldTrace.Web.Features.Limits;

public static class Registration
{
    public static IServiceCollection AddLimits(this IServiceCollection services) =>
        services
            .AddScoped<LimitListReader>()
            .AddScoped<ShipLimitsHandler>()
            .AddScoped<EnterLimitsHandler>()
            .AddScoped<LimitTableHandler>();

    public static void MapLimits(this IEndpointRouteBuilder endpoints) => endpoints.MapLimitCsv();
}
