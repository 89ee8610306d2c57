using System.Net;

namespace WeldTrace.Web.Demo;

/// <summary>Whether the site shows invented data; set by the setting <c>Demo</c>.</summary>
public sealed class DemoMode(IConfiguration configuration)
{
    public bool IsOn { get; } = configuration.GetValue("Demo", false);

    /// <summary>Everyone knows the passwords of the demonstration, so no other machine may reach it.</summary>
    /// <exception cref="InvalidOperationException">An address other than the loopback's is configured.</exception>
    public static void RequireLoopback(WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        if (!app.Services.GetRequiredService<DemoMode>().IsOn)
        {
            return;
        }

        var configured =
            app.Configuration["urls"]?.Split(';', StringSplitOptions.RemoveEmptyEntries) ?? [];
        var outside = configured.FirstOrDefault(u => !IsLoopback(u));
        if (outside is not null)
        {
            throw new InvalidOperationException(
                $"The demonstration listens on this machine only, not on {outside}: its passwords are public. Use http://127.0.0.1 and a port."
            );
        }

        app.Use(
            (context, next) =>
                context.Connection.RemoteIpAddress is { } remote && !IPAddress.IsLoopback(remote)
                    ? Refuse(context)
                    : next(context)
        );
    }

    private static bool IsLoopback(string address) =>
        Uri.TryCreate(
            address
                .Replace("*", "any", StringComparison.Ordinal)
                .Replace("+", "any", StringComparison.Ordinal),
            UriKind.Absolute,
            out var uri
        ) && uri.IsLoopback;

    private static Task Refuse(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        return Task.CompletedTask;
    }
}
