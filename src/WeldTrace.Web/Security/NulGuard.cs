using Microsoft.AspNetCore.Antiforgery;
using Microsoft.Extensions.Primitives;

namespace WeldTrace.Web.Security;

public static class NulGuard
{
    private const string Refused =
        "Nothing was done: the address or the form holds a NUL character, which no text here has. Type it again without it.";

    /// <summary>Answers a request with a NUL character in its text at once: the database keeps none, and fails even to look for one.</summary>
    public static IApplicationBuilder UseNulGuard(this IApplicationBuilder app) =>
        app.Use(
            async (context, next) =>
            {
                if (HasNul(context))
                {
                    context.Response.StatusCode = StatusCodes.Status400BadRequest;
                    context.Response.ContentType = "text/plain; charset=utf-8";
                    await context.Response.WriteAsync(Refused, context.RequestAborted);
                    return;
                }

                await next(context);
            }
        );

    // Only a form whose token was found has been read; a log that is brought is read as it arrives.
    private static bool HasNul(HttpContext context) =>
        context.Request.Query.Any(HasNul)
        || (
            context.Request.HasFormContentType
            && context.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: true }
            && context.Request.Form.Any(HasNul)
        );

    private static bool HasNul(KeyValuePair<string, StringValues> field) =>
        field.Key.Contains('\0', StringComparison.Ordinal)
        || field.Value.Any(v => v?.Contains('\0', StringComparison.Ordinal) is true);
}
