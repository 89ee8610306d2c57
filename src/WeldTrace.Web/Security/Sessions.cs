using System.Globalization;
using System.Security.Claims;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Net.Http.Headers;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>Begins, renews and ends sessions. The ticket of the browser names a row of the database, which alone says whether it is good.</summary>
public sealed class Sessions(
    IDbContextFactory<WeldTraceDbContext> contexts,
    SignInManager<Account> signIn,
    TimeProvider clock
)
{
    /// <summary>Signs in; whoever was signed in on this device is out.</summary>
    public async Task BeginAsync(Account account, SignInWay way, HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(account);
        ArgumentNullException.ThrowIfNull(http);
        var now = clock.GetUtcNow();
        await using var db = await contexts.CreateDbContextAsync(http.RequestAborted);
        var kept = now - AccountSession.KeptFor;
        await db
            .AccountSessions.Where(s => s.BegunAt < kept)
            .ExecuteDeleteAsync(http.RequestAborted);
        var before = IdOf(http.User);
        if (await db.AccountSessions.SingleOrDefaultAsync(s => s.Id == before) is { } old)
        {
            old.End(SessionEnd.SignedInAgain, now);
        }

        var session = new AccountSession
        {
            Id = Guid.CreateVersion7(now),
            AccountId = account.Id,
            Way = way,
            Device = DeviceWords.Of(http.Request.Headers[HeaderNames.UserAgent].ToString()),
            BegunAt = now,
            LastSeenAt = now,
        };
        db.Add(session);
        await db.SaveChangesAsync(http.RequestAborted);
        await IssueAsync(account, session.Id);
    }

    /// <summary>Lets the session of a request go on after something changed about its account.</summary>
    public Task GoOnAsync(Account account, ClaimsPrincipal user) => IssueAsync(account, IdOf(user));

    /// <summary>The same after something that ends every other session of the account.</summary>
    public async Task GoOnAloneAsync(Account account, ClaimsPrincipal user)
    {
        ArgumentNullException.ThrowIfNull(account);
        await using var db = await contexts.CreateDbContextAsync();
        await db.EndSessionsAsync(
            account.Id,
            IdOf(user),
            SessionEnd.NewMeans,
            clock.GetUtcNow(),
            CancellationToken.None
        );
        await db.SaveChangesAsync();
        await GoOnAsync(account, user);
    }

    /// <summary>Signs out.</summary>
    public async Task SignOutAsync(ClaimsPrincipal user)
    {
        var id = IdOf(user);
        await using var db = await contexts.CreateDbContextAsync();
        if (await db.AccountSessions.SingleOrDefaultAsync(s => s.Id == id) is { } session)
        {
            session.End(SessionEnd.SignedOut, clock.GetUtcNow());
            await db.SaveChangesAsync();
        }

        await signIn.SignOutAsync();
    }

    /// <summary>The session that a ticket names; the empty identity when it names none.</summary>
    internal static Guid IdOf(ClaimsPrincipal? user) =>
        Guid.TryParse(user?.FindFirstValue(AccountClaims.Session), out var id) ? id : Guid.Empty;

    private Task IssueAsync(Account account, Guid session) =>
        signIn.SignInWithClaimsAsync(
            account,
            authenticationProperties: null,
            [new Claim(AccountClaims.Session, session.ToString("D", CultureInfo.InvariantCulture))]
        );
}
