using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Features.Qualifications.Enter;
using WeldTrace.Web.Features.Qualifications.List;
using WeldTrace.Web.Features.Qualifications.Plan;
using WeldTrace.Web.Features.Qualifications.Sheet;
using WeldTrace.Web.Features.Qualifications.Show;
using WeldTrace.Web.Features.Qualifications.Weld;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Qualifications;

public static class Registration
{
    public static IServiceCollection AddQualifications(this IServiceCollection services) =>
        services
            .AddScoped<QualificationListReader>()
            .AddScoped<PlanQualificationHandler>()
            .AddScoped<QualificationHandler>()
            .AddScoped<QualificationReader>()
            .AddScoped<BeginPieceHandler>()
            .AddScoped<TestPieceHandler>()
            .AddScoped<EnterResultHandler>()
            .AddScoped<ResultReader>()
            .AddScoped<IWorkings, QualificationWorkings>()
            .AddScoped<IWorkings, ResultWorkings>()
            .AddScoped<IBookChapters, QualificationSheetReader>()
            .AddScoped<QualificationSheetReader>();

    public static void MapQualifications(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapQualificationCsv();
        endpoints.MapQualificationSheet();
        endpoints.MapTestPieceLog();
    }
}
