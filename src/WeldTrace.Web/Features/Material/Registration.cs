using WeldTrace.Web.Features.Material.Components;
using WeldTrace.Web.Features.Material.HeatTreatments;
using WeldTrace.Web.Features.Material.Import;
using WeldTrace.Web.Features.Material.Lots;

namespace WeldTrace.Web.Features.Material;

public static class Registration
{
    public static IServiceCollection AddMaterial(this IServiceCollection services) =>
        services
            .AddScoped<LotReader>()
            .AddScoped<EnterLotHandler>()
            .AddScoped<FileLotHandler>()
            .AddScoped<ImportLotsHandler>()
            .AddScoped<ComponentReader>()
            .AddScoped<EnterComponentsHandler>()
            .AddScoped<HeatTreatmentReader>()
            .AddScoped<HeatTreatmentHandler>();

    public static void MapMaterial(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapLotCsv();
        endpoints.MapComponentCsv();
        endpoints.MapHeatTreatmentCsv();
    }
}
