using WeldTrace.Web.Components.Figures;
using WeldTrace.Web.Features.Tools.Card;
using WeldTrace.Web.Features.Tools.Designs;
using WeldTrace.Web.Features.Tools.Enter;
using WeldTrace.Web.Features.Tools.Import;
using WeldTrace.Web.Features.Tools.Inspect;
using WeldTrace.Web.Features.Tools.List;
using WeldTrace.Web.Features.Tools.Parts;
using WeldTrace.Web.Features.Tools.Show;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Features.Tools;

public static class Registration
{
    public static IServiceCollection AddTools(this IServiceCollection services) =>
        services
            .AddScoped<ToolListReader>()
            .AddScoped<ToolReader>()
            .AddScoped<IWorkings, ToolWorkings>()
            .AddScoped<ChangeToolHandler>()
            .AddScoped<InspectToolHandler>()
            .AddScoped<FitPartHandler>()
            .AddScoped<ImportToolsHandler>()
            .AddScoped<EnterToolHandler>()
            .AddScoped<ToolDesignHandler>()
            .AddScoped<ToolDesignListReader>()
            .AddScoped<ToolUpkeepHandler>()
            .AddScoped<IBookChapters, ToolCardReader>()
            .AddScoped<ToolCardReader>();

    public static void MapTools(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapToolCsv();
        endpoints.MapToolDesignCsv();
        endpoints.MapToolCard();
    }
}
