using WeldTrace.Web.Features.Concessions.Ask;
using WeldTrace.Web.Features.Concessions.Show;

namespace WeldTrace.Web.Features.Concessions;

public static class Registration
{
    public static IServiceCollection AddConcessions(this IServiceCollection services) =>
        services.AddScoped<AskConcessionHandler>().AddScoped<ConcessionHandler>();
}
