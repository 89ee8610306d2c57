using System.Security.Claims;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Security;

/// <summary>Proves another system by its token, which lets it do one kind of thing.</summary>
public sealed class SystemTokenScheme(
    IOptionsMonitor<AuthenticationSchemeOptions> options,
    ILoggerFactory logger,
    UrlEncoder encoder,
    IDbContextFactory<WeldTraceDbContext> contexts
) : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string Name = "system-token";

    /// <summary>Claim that holds the token's record.</summary>
    public const string TokenClaim = "system-token";

    /// <summary>Claim that says what the token is for.</summary>
    public const string ScopeClaim = "system-scope";

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (TokenWord.HashFrom(Request) is not { } hash)
        {
            return AuthenticateResult.NoResult();
        }

        await using var db = await contexts.CreateDbContextAsync(Context.RequestAborted);
        var token = await db
            .SystemTokens.AsNoTracking()
            .SingleOrDefaultAsync(t => t.TokenSha256 == hash, Context.RequestAborted);
        if (token?.HoldsAt(TimeProvider.GetUtcNow()) is not true)
        {
            return AuthenticateResult.Fail("The token is none that holds.");
        }

        var identity = new ClaimsIdentity(
            [new(TokenClaim, token.Id.ToString("D")), new(ScopeClaim, token.Scope.ToString())],
            Name
        );
        return AuthenticateResult.Success(new(new ClaimsPrincipal(identity), Name));
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers[HeaderNames.WWWAuthenticate] = "Bearer";
        return RefuseAsync(
            StatusCodes.Status401Unauthorized,
            "The token is missing, wrong, withdrawn or past its end. An administrator gives a new one on the page of tokens."
        );
    }

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties) =>
        RefuseAsync(
            StatusCodes.Status403Forbidden,
            "The token holds, but is for something else. Use the token that was given for this."
        );

    private Task RefuseAsync(int status, string sentence) =>
        Results.Problem(sentence, statusCode: status).ExecuteAsync(Context);
}
