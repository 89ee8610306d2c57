using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Authorization.Policy;
using Microsoft.Net.Http.Headers;

namespace WeldTrace.Web.Security;

/// <summary>Tells in the log who asked for what is not for their role, and where a token did not hold; the answer stays the usual one.</summary>
internal sealed partial class RefusalLog(ILogger<RefusalLog> logger)
    : IAuthorizationMiddlewareResultHandler
{
    private readonly AuthorizationMiddlewareResultHandler _usual = new();

    public Task HandleAsync(
        RequestDelegate next,
        HttpContext context,
        AuthorizationPolicy policy,
        PolicyAuthorizationResult authorizeResult
    )
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(authorizeResult);
        // The pattern, since an address holds what anybody likes.
        var pattern = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText;
        if (authorizeResult.Forbidden)
        {
            var person = context.User.FindFirst(AccountClaims.PersonId)?.Value;
            LogRole(logger, person, context.Request.Method, pattern);
        }
        else if (
            authorizeResult.Challenged
            && context.Request.Headers.ContainsKey(HeaderNames.Authorization)
        )
        {
            LogToken(logger, context.Connection.RemoteIpAddress, pattern);
        }

        return _usual.HandleAsync(next, context, policy, authorizeResult);
    }

    [LoggerMessage(
        LogLevel.Warning,
        "Person {Person} was refused {Method} {Pattern}: it is not for their role."
    )]
    private static partial void LogRole(
        ILogger logger,
        string? person,
        string method,
        string? pattern
    );

    [LoggerMessage(LogLevel.Warning, "A token from {Address} was refused at {Pattern}.")]
    private static partial void LogToken(
        ILogger logger,
        System.Net.IPAddress? address,
        string? pattern
    );
}
