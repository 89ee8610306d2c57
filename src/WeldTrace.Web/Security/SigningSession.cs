using System.Security.Claims;

namespace WeldTrace.Web.Security;

/// <summary>The signing session of the request. Without a request there is none, and the name is always asked for.</summary>
internal sealed class SigningSession(IHttpContextAccessor http, SessionBook sessions)
    : ISigningSession
{
    public bool AsksForName => Session is not { } session || !sessions.HasSigned(session);

    public string? TypedName =>
        http.HttpContext is { Request.HasFormContentType: true } context
            ? context
                .Request.Form.FirstOrDefault(f =>
                    f.Key.EndsWith("." + ISigningSession.Field, StringComparison.Ordinal)
                )
                .Value.ToString()
            : null;

    private string? Session => http.HttpContext?.User.FindFirstValue(AccountClaims.Session);

    public void Begin()
    {
        if (Session is { } session)
        {
            sessions.Sign(session);
        }
    }
}
