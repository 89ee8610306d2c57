using Microsoft.AspNetCore.StaticAssets;
using WeldTrace.Web.Reading;

namespace WeldTrace.Web.Security;

public static class FirstRunGuard
{
    private static readonly string[] Open =
    [
        Routes.FirstRun,
        Routes.Health,
        "/_framework",
        "/_blazor",
        "/failure",
    ];

    /// <summary>Sends everyone to the set-up page until the site is set up, and to the password page while a password must be changed.</summary>
    public static IApplicationBuilder UseFirstRun(this IApplicationBuilder app) =>
        app.Use(
            async (context, next) =>
            {
                var path = context.Request.Path;
                if (Open.Any(o => path.StartsWithSegments(o)) || IsFileOfTheProgram(context))
                {
                    await next(context);
                    return;
                }

                var sites = context.RequestServices.GetRequiredService<SiteReader>();
                if (await sites.FindAsync(context.RequestAborted) is null)
                {
                    context.Response.Redirect(Routes.FirstRun);
                    return;
                }

                var mustChange = context.User.HasClaim(AccountClaims.MustChangePassword, "true");
                if (mustChange && path != Routes.ChangePassword && path != Routes.SignOut)
                {
                    context.Response.Redirect(Routes.ChangePassword);
                    return;
                }

                await next(context);
            }
        );

    private static bool IsFileOfTheProgram(HttpContext context) =>
        context.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null;
}
