using Microsoft.AspNetCore.Antiforgery;

namespace WeldTrace.Web.Security;

public static class ForgeryGuard
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
        context.Response.StatusCode = cause is BadHttpRequestException bad
            ? bad.StatusCode
            : StatusCodes.Status400BadRequest;
        return context.Response.WriteAsync(
            cause is IOException or InvalidDataException ? Unread : Forged,
            context.RequestAborted
        );
    }
}
