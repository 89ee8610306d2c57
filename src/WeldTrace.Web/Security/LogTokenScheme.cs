using System.Security.Claims;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
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

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (
            TokenWord.HashFrom(Request) is not { } hash
            || !Guid.TryParse(Request.RouteValues["id"]?.ToString(), out var id)
        )
        {
            return AuthenticateResult.NoResult();
        }

        await using var db = await contexts.CreateDbContextAsync(Context.RequestAborted);
        var machine = await db
            .Machines.AsNoTracking()
            .SingleOrDefaultAsync(m => m.Id == id, Context.RequestAborted);
        if (machine?.TakesLogsFor(hash, TimeProvider.GetUtcNow()) is not true)
        {
            return AuthenticateResult.Fail("The token is not one of this machine that holds.");
        }

        var identity = new ClaimsIdentity([new(MachineClaim, id.ToString("D"))], Name);
        return AuthenticateResult.Success(new(new ClaimsPrincipal(identity), Name));
    }

    // With words of its own, or the page for people would be asked to answer the machine.
    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer";
        return Results
            .Problem(
                "The token is missing, withdrawn, past its end, or not one of this machine. An administrator makes one on the machine's page.",
                statusCode: StatusCodes.Status401Unauthorized
            )
            .ExecuteAsync(Context);
    }

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties) =>
        HandleChallengeAsync(properties);
}
