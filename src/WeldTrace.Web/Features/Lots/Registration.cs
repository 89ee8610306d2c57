using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Features.Lots.List;
using WeldTrace.Web.Features.Lots.Make;
using WeldTrace.Web.Features.Lots.Show;

namespace WeldTrace.Web.Features.Lots;

public static class Registration
{
    public static IServiceCollection AddLots(this IServiceCollection services) =>
        services
            .AddScoped<LotListReader>()
            .AddScoped<MakeLotHandler>()
            .AddScoped<LotHandler>()
            .AddScoped<IWorkings, LotWorkings>();

    public static void MapLots(this IEndpointRouteBuilder endpoints) => endpoints.MapLotListCsv();
}
