using Microsoft.AspNetCore.Authorization;
using WeldTrace.Web.Features.Trace.Histories;

namespace WeldTrace.Web.Features.Trace;

public static class Registration
{
    public static IServiceCollection AddTrace(this IServiceCollection services) =>
        services
            .AddScoped<TraceReader>()
            .AddSingleton<HistorySettings>()
            .AddSingleton<OrderFiles>()
            .AddSingleton<HistoryOrders>()
            .AddSingleton<IAuthorizationHandler, OrderAuthorization>()
            .AddScoped<OrderedVesselsReader>()
            .AddScoped<CollectionDesk>()
            .AddHostedService<OrderWorker>();

    public static void MapTrace(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapTraceFiles();
        endpoints.MapHistoryFiles();
    }
}
