using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using Microsoft.Net.Http.Headers;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Security;

/// <summary>Proves a machine by the token that an administrator gave it: it may push its own process logs, and nothing else.</summary>
public sealed class LogTokenScheme(
    IOptionsMonitor<AuthenticationSchemeOptions> options,
    ILoggerFactory logger,
    UrlEncoder encoder,
    IDbContextFactory<WeldTraceDbContext> contexts
) : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string Name = "log-token";

    /// <summary>Claim that holds the machine.</summary>
    public const string MachineClaim = "machine";

    private const string Bearer = "Bearer ";
    private const int TokenBytes = 32;

    /// <summary>A new token: 256 random bits, in letters and digits.</summary>
    public static string NewToken() =>
        Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(TokenBytes));

    /// <summary>The form in which a token is kept; a word of 256 random bits needs no slow hash.</summary>
    public static string HashOf(string token) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers[HeaderNames.Authorization].ToString();
        if (
            !header.StartsWith(Bearer, StringComparison.Ordinal)
            || !Guid.TryParse(Request.RouteValues["id"]?.ToString(), out var id)
        )
        {
            return AuthenticateResult.NoResult();
        }

        await using var db = await contexts.CreateDbContextAsync(Context.RequestAborted);
        var machine = await db
            .Machines.AsNoTracking()
            .SingleOrDefaultAsync(m => m.Id == id, Context.RequestAborted);
        if (machine?.TakesLogsFor(HashOf(header[Bearer.Length..].Trim())) is not true)
        {
            return AuthenticateResult.Fail("The token is not one of this machine that holds.");
        }

        var identity = new ClaimsIdentity([new(MachineClaim, id.ToString("D"))], Name);
        return AuthenticateResult.Success(new(new ClaimsPrincipal(identity), Name));
    }

    // With words of its own, or the page for people would be asked to answer the machine.
    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        Response.Headers.WWWAuthenticate = "Bearer";
        Response.ContentType = "text/plain; charset=utf-8";
        return Response.WriteAsync(
            "The token is missing, withdrawn, or not one of this machine. An administrator makes one on the machine's page.",
            Context.RequestAborted
        );
    }

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties) =>
        HandleChallengeAsync(properties);
}
