using WeldTrace.Domain.Ledger;
using WeldTrace.Persistence.Roles;
using WeldTrace.Web.Features.LedgerView.Check;
using WeldTrace.Web.Features.LedgerView.Checkpoints;

namespace WeldTrace.Web.Features.LedgerView;

public static class Registration
{
    public static IServiceCollection AddLedger(this IServiceCollection services)
    {
        services
            .AddHttpClient<TimeStampService>(http => http.Timeout = TimeSpan.FromSeconds(30))
            // The service of the settings is asked, and nobody that it may name instead.
            .ConfigurePrimaryHttpMessageHandler(() =>
                new SocketsHttpHandler { AllowAutoRedirect = false }
            );
        return services
            .AddSingleton(provider => new SiteKeyFolder(
                provider.GetRequiredService<DatabaseSettings>().Folder
            ))
            .AddSingleton<CheckpointSettings>()
            .AddSingleton<CheckpointDesk>()
            .AddSingleton<LedgerCheckDesk>()
            .AddHostedService<CheckpointClock>()
            .AddScoped<CheckpointListReader>()
            .AddScoped<CheckpointHandler>()
            .AddScoped<LedgerHandler>();
    }

    public static void MapLedger(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapLedgerCsv();
        endpoints.MapCheckpoints();
        endpoints.MapLedgerCheck();
    }
}
