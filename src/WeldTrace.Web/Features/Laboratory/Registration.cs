using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Features.Laboratory.Enter;
using WeldTrace.Web.Features.Laboratory.List;
using WeldTrace.Web.Features.Laboratory.Report;
using WeldTrace.Web.Features.Laboratory.Show;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Laboratory;

public static class Registration
{
    public static IServiceCollection AddLaboratory(this IServiceCollection services) =>
        services
            .AddScoped<EnterLaboratoryHandler>()
            .AddScoped<LaboratoryListReader>()
            .AddScoped<LaboratoryReader>()
            .AddScoped<IWorkings, LaboratoryWorkings>()
            .AddScoped<IBookChapters, LaboratoryReportReader>()
            .AddScoped<LaboratoryReportReader>();

    public static void MapLaboratory(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapLaboratoryCsv();
        endpoints.MapLaboratoryReport();
    }
}
