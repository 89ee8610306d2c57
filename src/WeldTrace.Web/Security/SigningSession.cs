using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>The signing session of the request. Without a request there is none, and the name is always asked for.</summary>
internal sealed class SigningSession(
    IHttpContextAccessor http,
    SessionBook sessions,
    SignInManager<Account> signIn
) : ISigningSession
{
    public bool AsksForName => Session is not { } session || !sessions.HasSigned(session);

    public bool AsksForCode => AsksForName && Has(AccountClaims.SecondFactor);

    public bool HasPasskey => Has(AccountClaims.Passkey);

    public string? TypedName => Sent(ISigningSession.Field);

    public string? TypedCode => Sent(ISigningSession.CodeField);

    private string? Session => http.HttpContext?.User.FindFirstValue(AccountClaims.Session);

    public async Task<PasskeyProof?> PasskeyAsync()
    {
        if (Sent(ISigningSession.PasskeyField) is not { Length: > 0 } credential)
        {
            return null;
        }

        var proved = await signIn.ProveAsync(credential);
        return new PasskeyProof(proved?.PersonId);
    }

    public void Begin()
    {
        if (Session is { } session)
        {
            sessions.Sign(session);
        }
    }

    private bool Has(string claim) => http.HttpContext?.User.HasClaim(claim, "true") is true;

    private string? Sent(string field) =>
        http.HttpContext is { Request.HasFormContentType: true } context
            ? context
                .Request.Form.FirstOrDefault(f =>
                    f.Key.EndsWith("." + field, StringComparison.Ordinal)
                )
                .Value.ToString()
            : null;
}
