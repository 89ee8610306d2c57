using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Features.Procedures.Compare;
using WeldTrace.Web.Features.Procedures.List;
using WeldTrace.Web.Features.Procedures.Sheet;
using WeldTrace.Web.Features.Procedures.Show;
using WeldTrace.Web.Features.Procedures.Write;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Procedures;

public static class Registration
{
    public static IServiceCollection AddProcedures(this IServiceCollection services) =>
        services
            .AddScoped<ProcedureListReader>()
            .AddScoped<ProcedurePageReader>()
            .AddScoped<IWorkings, ProcedureWorkings>()
            .AddScoped<CompareProceduresReader>()
            .AddScoped<MoveProcedureHandler>()
            .AddScoped<ReviseProcedureHandler>()
            .AddScoped<WithdrawProcedureHandler>()
            .AddScoped<WriteProcedureHandler>()
            .AddScoped<IBookChapters, ProcedureSheetReader>()
            .AddScoped<ProcedureSheetReader>();

    public static void MapProcedures(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapProcedureCsv();
        endpoints.MapProcedureSheet();
        endpoints.MapProcedureFigures();
    }
}
