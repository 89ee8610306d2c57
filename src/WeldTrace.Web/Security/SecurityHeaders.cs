using Microsoft.Extensions.Primitives;

namespace WeldTrace.Web.Security;

public static class SecurityHeaders
{
    private const string ContentSecurityPolicy =
        "default-src 'self'; img-src 'self' data: blob:; style-src 'self'; script-src 'self'; connect-src 'self' ws: wss:; object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    /// <summary>Headers that make a browser refuse what the pages never need.</summary>
    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app) =>
        app.Use(
            (context, next) =>
            {
                var headers = context.Response.Headers;
                headers.ContentSecurityPolicy = ContentSecurityPolicy;
                headers.XContentTypeOptions = "nosniff";
                if (context.Request.IsHttps)
                {
                    headers.StrictTransportSecurity = "max-age=31536000; includeSubDomains";
                }

                headers["Referrer-Policy"] = "same-origin";
                headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
                headers["Cross-Origin-Opener-Policy"] = "same-origin";
                context.Response.OnStarting(() =>
                {
                    // Records stay in no cache after their reader signed out; files of the program say how long they keep.
                    if (StringValues.IsNullOrEmpty(headers.CacheControl))
                    {
                        headers.CacheControl = "no-store";
                    }

                    return Task.CompletedTask;
                });
                return next(context);
            }
        );
}
