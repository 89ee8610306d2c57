using WeldTrace.Web.Features.ProductionTests.List;
using WeldTrace.Web.Features.ProductionTests.RecordOne;

namespace WeldTrace.Web.Features.ProductionTests;

public static class Registration
{
    public static IServiceCollection AddProductionTests(this IServiceCollection services) =>
        services.AddScoped<ProductionTestListReader>().AddScoped<RecordProductionTestHandler>();

    public static void MapProductionTests(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapProductionTestCsv();
}
