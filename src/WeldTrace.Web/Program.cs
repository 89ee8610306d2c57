using System.Globalization;
using Microsoft.AspNetCore.Antiforgery;
using WeldTrace.Persistence;
using WeldTrace.Persistence.PrivateServer;
using WeldTrace.Web;
using WeldTrace.Web.Demo;
using WeldTrace.Web.Features;
using WeldTrace.Web.Features.LedgerView.Check;
using WeldTrace.Web.Reading;
using WeldTrace.Web.Security;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

if (args is [LedgerCheckCommand.Name, .. var settings])
{
    return await LedgerCheckCommand.RunAsync(settings, Console.Out);
}

var builder = WebApplication.CreateBuilder(args);
builder.Services.AddLogTimes();
builder.Services.AddPersistence();
builder.Services.AddSecurity(builder.Configuration);
builder.Services.AddReading();
builder.Services.AddDemo(builder.Configuration);
builder.Services.AddFeatures();
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddRazorComponents().AddInteractiveServerComponents();
builder.Services.AddProblemDetails();
builder.Host.UseDefaultServiceProvider(provider =>
    (provider.ValidateScopes, provider.ValidateOnBuild) = (true, true)
);

var app = builder.Build();
DemoMode.RequireLoopback(app);
app.UseExceptionHandler("/failure", createScopeForErrors: true);
app.UseWhen(
    context => context.Request.Path.StartsWithSegments("/api"),
    api => api.UseExceptionHandler()
);
app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
app.UseSecurityHeaders();
app.UseAuthentication();
app.UseFirstRun();
app.UseAuthorization();
app.UseRateLimiter();
app.UseForgeryGuard();
app.UseNulGuard();
app.UseMissingRecords();
app.MapStaticAssets().AllowAnonymous();
app.MapHealthChecks(Routes.Health).AllowAnonymous();
app.MapPost(
        Routes.SignOut,
        async (HttpContext http, Sessions sessions, TabletCookie tablet) =>
        {
            await sessions.SignOutAsync(http.User);
            return Results.LocalRedirect(tablet.Door);
        }
    )
    .WithMetadata(new RequireAntiforgeryTokenAttribute());
app.MapFeatures();
app.MapRazorComponents<App>().AddInteractiveServerRenderMode();
try
{
    await app.RunAsync();
    return 0;
}
catch (DatabaseStartException refusal)
{
    await Console.Error.WriteLineAsync(refusal.Message);
    return 1;
}
