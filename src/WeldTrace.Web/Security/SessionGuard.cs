using System.Globalization;
using System.Security.Claims;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>Looks at each request whether the ticket that came with it is still good.</summary>
internal static class SessionGuard
{
    /// <summary>Refuses the ticket of a session that is over or of an inactive person at once, and takes over changed roles without a new sign-in.</summary>
    public static async Task ValidateAsync(CookieValidatePrincipalContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var http = context.HttpContext;
        var signIn = http.RequestServices.GetRequiredService<SignInManager<Account>>();
        var now = http.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow();
        var contexts = http.RequestServices.GetRequiredService<
            IDbContextFactory<WeldTraceDbContext>
        >();
        await using var db = await contexts.CreateDbContextAsync(http.RequestAborted);
        var ticket = context.Principal!;
        var current = await FindAsync(db, Sessions.IdOf(ticket), http.RequestAborted);
        if (
            current is null
            || current.SecurityStamp
                != ticket.FindFirstValue(new ClaimsIdentityOptions().SecurityStampClaimType)
            || current.Session.StateAt(now) != SessionState.Open
        )
        {
            await RefuseAsync();
            return;
        }

        await SeeAsync(db, current.Session, now, http.RequestAborted);
        http.Features.Set(current.Session);
        var version = current.PersonVersion.ToString(CultureInfo.InvariantCulture);
        if (
            ticket.FindFirstValue(AccountClaims.PersonVersion) != version
            && await signIn.UserManager.GetUserAsync(ticket) is { } account
        )
        {
            // A change of roles is no new sign-in: the session goes on.
            var changed = await signIn.CreateUserPrincipalAsync(account);
            if (
                current.Session.Way == SignInWay.Pin
                && changed.IsInRole(nameof(Role.Administrator))
            )
            {
                await RefuseAsync();
                return;
            }

            ((ClaimsIdentity)changed.Identity!).AddClaims(Sessions.ClaimsOf(current.Session));
            context.ReplacePrincipal(changed);
            context.ShouldRenew = true;
        }

        Task RefuseAsync()
        {
            context.RejectPrincipal();
            return signIn.SignOutAsync();
        }
    }

    private static Task<Standing?> FindAsync(
        WeldTraceDbContext db,
        Guid session,
        CancellationToken cancellation
    ) =>
        db
            .AccountSessions.AsNoTracking()
            .Where(s => s.Id == session)
            .Join(db.Users, s => s.AccountId, a => a.Id, (s, a) => new { Session = s, Account = a })
            .Join(
                db.People.Where(p => p.IsActive),
                both => both.Account.PersonId,
                p => p.Id,
                (both, p) => new Standing(both.Session, both.Account.SecurityStamp, p.Version)
            )
            .SingleOrDefaultAsync(cancellation);

    private static async Task SeeAsync(
        WeldTraceDbContext db,
        AccountSession session,
        DateTimeOffset now,
        CancellationToken cancellation
    )
    {
        if (now - session.LastSeenAt >= AccountSession.SeenEvery)
        {
            await db
                .AccountSessions.Where(s => s.Id == session.Id)
                .ExecuteUpdateAsync(
                    change => change.SetProperty(s => s.LastSeenAt, now),
                    cancellation
                );
        }
    }

    private sealed record Standing(
        AccountSession Session,
        string? SecurityStamp,
        int PersonVersion
    );
}
