namespace WeldTrace.Web.Features.Trace;

public static class Registration
{
    public static IServiceCollection AddTrace(this IServiceCollection services) =>
        services.AddScoped<TraceReader>();
}
