using WeldTrace.Web.Features.OwnAccount.Passkeys;
using WeldTrace.Web.Features.OwnAccount.Pin;
using WeldTrace.Web.Features.OwnAccount.SecondFactor;
using WeldTrace.Web.Features.OwnAccount.Sessions;

namespace WeldTrace.Web.Features.OwnAccount;

/// <summary>What people do with the means by which they sign in.</summary>
public static class Registration
{
    public static IServiceCollection AddOwnAccount(this IServiceCollection services) =>
        services
            .AddScoped<OwnMeansHandler>()
            .AddScoped<SecondFactorHandler>()
            .AddScoped<PasskeysHandler>()
            .AddScoped<SessionsHandler>()
            .AddScoped<PinHandler>();

    public static void MapOwnAccount(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapPasskeys();
}
