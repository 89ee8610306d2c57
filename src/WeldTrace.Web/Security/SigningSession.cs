using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>The signing session of the request. Without a request there is none, and the name is always asked for.</summary>
internal sealed class SigningSession(
    IHttpContextAccessor http,
    IDbContextFactory<WeldTraceDbContext> contexts,
    SignInManager<Account> signIn,
    TimeProvider clock
) : ISigningSession
{
    public bool AsksForName => Session?.SignedAt is null;

    public bool AsksForCode => AsksForName && Has(AccountClaims.SecondFactor);

    public bool HasPasskey => Has(AccountClaims.Passkey);

    public string? TypedName => Sent(ISigningSession.Field);

    public string? TypedCode => Sent(ISigningSession.CodeField);

    private AccountSession? Session => http.HttpContext?.Features.Get<AccountSession>();

    public async Task<PasskeyProof?> PasskeyAsync()
    {
        if (Sent(ISigningSession.PasskeyField) is not { Length: > 0 } credential)
        {
            return null;
        }

        var proved = await signIn.ProveAsync(credential);
        return new PasskeyProof(proved?.PersonId);
    }

    public async Task BeginAsync()
    {
        if (Session is { SignedAt: null } session)
        {
            session.SignedAt = clock.GetUtcNow();
            await using var db = await contexts.CreateDbContextAsync();
            await db
                .AccountSessions.Where(s => s.Id == session.Id)
                .ExecuteUpdateAsync(change =>
                    change.SetProperty(s => s.SignedAt, session.SignedAt)
                );
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
