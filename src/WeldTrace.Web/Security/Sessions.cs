using System.Globalization;
using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Http.Features;
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
    TabletCookie tablets,
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
            old.End(
                old.AccountId == account.Id ? SessionEnd.SignedInAgain : SessionEnd.OtherPerson,
                now
            );
        }

        var session = new AccountSession
        {
            Id = Guid.CreateVersion7(now),
            AccountId = account.Id,
            Way = way,
            Device = DeviceWords.Of(http.Request.Headers[HeaderNames.UserAgent].ToString()),
            TabletId = (await tablets.FindAsync(http.RequestAborted))?.Id,
            BegunAt = now,
            LastSeenAt = now,
        };
        db.Add(session);
        await db.SaveChangesAsync(http.RequestAborted);
        await IssueAsync(account, session);
    }

    /// <summary>Lets the session of a request go on after something changed about its account.</summary>
    public Task GoOnAsync(Account account, HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        return IssueAsync(account, http.Features.GetRequiredFeature<AccountSession>());
    }

    /// <summary>The same after something that ends every other session of the account, and erases its PINs.</summary>
    public async Task GoOnAloneAsync(Account account, HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(account);
        ArgumentNullException.ThrowIfNull(http);
        await using var db = await contexts.CreateDbContextAsync();
        await db.EndSessionsAsync(
            account.Id,
            IdOf(http.User),
            SessionEnd.NewMeans,
            clock.GetUtcNow(),
            CancellationToken.None
        );
        await db.ErasePinsAsync(account.Id, CancellationToken.None);
        await db.SaveChangesAsync();
        await GoOnAsync(account, http);
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

    /// <summary>What a ticket says of its session.</summary>
    internal static IEnumerable<Claim> ClaimsOf(AccountSession session)
    {
        yield return new Claim(
            AccountClaims.Session,
            session.Id.ToString("D", CultureInfo.InvariantCulture)
        );
        if (session.Way == SignInWay.Pin)
        {
            yield return new Claim(AccountClaims.ByPin, "true");
        }
    }

    private Task IssueAsync(Account account, AccountSession session)
    {
        var now = clock.GetUtcNow();
        return signIn.SignInWithClaimsAsync(
            account,
            new AuthenticationProperties { IssuedUtc = now, ExpiresUtc = now + session.IdleTime },
            ClaimsOf(session)
        );
    }
}
