using WeldTrace.Web.Features.Vessels.List;
using WeldTrace.Web.Features.Vessels.Page;
using WeldTrace.Web.Features.Vessels.Plan;
using WeldTrace.Web.Features.Vessels.Ship;

namespace WeldTrace.Web.Features.Vessels;

public static class Registration
{
    public static IServiceCollection AddVessels(this IServiceCollection services) =>
        services
            .AddScoped<VesselListReader>()
            .AddScoped<VesselPageReader>()
            .AddScoped<PlanVesselHandler>()
            .AddScoped<ShipVesselHandler>();

    public static void MapVessels(this IEndpointRouteBuilder endpoints) => endpoints.MapVesselCsv();
}
