using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Features.Designs.Draw;
using WeldTrace.Web.Features.Designs.List;
using WeldTrace.Web.Features.Designs.Show;

namespace WeldTrace.Web.Features.Designs;

public static class Registration
{
    public static IServiceCollection AddDesigns(this IServiceCollection services) =>
        services
            .AddScoped<DesignListReader>()
            .AddScoped<DesignReader>()
            .AddScoped<IWorkings, DesignWorkings>()
            .AddScoped<ReleaseDesignHandler>()
            .AddScoped<DrawDesignHandler>();

    public static void MapDesigns(this IEndpointRouteBuilder endpoints) => endpoints.MapDesignCsv();
}
