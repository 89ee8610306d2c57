using System.Net;
using Microsoft.AspNetCore.Antiforgery;

namespace WeldTrace.Web.Security;

public static partial class ForgeryGuard
{
    private const string Forged =
        "Nothing was done: the form was shown to somebody else, or too long ago. Load its page anew, and send it again.";

    private const string Unread =
        "Nothing was done: the form did not arrive whole, or it or its file is too large. Go back, choose a smaller file, and send it again.";

    /// <summary>Answers a form without its own anti-forgery token at once, whatever its endpoint would read of it.</summary>
    public static IApplicationBuilder UseForgeryGuard(this IApplicationBuilder app) =>
        app.UseAntiforgery()
            .Use(
                (context, next) =>
                    context.Features.Get<IAntiforgeryValidationFeature>()
                        is { IsValid: false } found
                        ? RefuseAsync(context, found.Error?.InnerException)
                        : next(context)
            );

    private static Task RefuseAsync(HttpContext context, Exception? cause)
    {
        var isUnread = cause is IOException or InvalidDataException;
        if (!isUnread)
        {
            var logs = context.RequestServices.GetRequiredService<ILoggerFactory>();
            LogForged(
                logs.CreateLogger(typeof(ForgeryGuard)),
                context.Connection.RemoteIpAddress,
                (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText
            );
        }

        context.Response.StatusCode = cause is BadHttpRequestException bad
            ? bad.StatusCode
            : StatusCodes.Status400BadRequest;
        context.Response.ContentType = "text/plain; charset=utf-8";
        return context.Response.WriteAsync(isUnread ? Unread : Forged, context.RequestAborted);
    }

    [LoggerMessage(
        LogLevel.Warning,
        "A form from {Address} to {Pattern} was refused: its token is not the one of whoever sent it."
    )]
    private static partial void LogForged(ILogger logger, IPAddress? address, string? pattern);
}
