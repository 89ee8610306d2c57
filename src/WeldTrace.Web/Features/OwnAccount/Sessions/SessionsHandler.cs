using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Features.OwnAccount.Sessions;

public sealed class EndSessionForm
{
    /// <summary>Identity of the session, or <see cref="SessionsHandler.AllOthers"/>.</summary>
    public string? Which { get; set; }

    public string? Password { get; set; }
}

/// <summary>Lists one's own sessions and ends those on other devices.</summary>
public sealed class SessionsHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    OwnMeansHandler means,
    TimeProvider clock
)
{
    /// <summary>Stands for all sessions but the one that asks.</summary>
    public const string AllOthers = "others";

    private const int MostListed = 50;

    /// <summary>The session that asks; it is ended by signing out.</summary>
    public static Guid ThisOne(HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        return Security.Sessions.IdOf(http.User);
    }

    /// <summary>Sessions that are kept, those that are good first, then the latest.</summary>
    public async Task<IReadOnlyList<AccountSession>> ListAsync(
        HttpContext http,
        CancellationToken cancellation
    )
    {
        var account = await means.AccountAsync(http);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var sessions = await db
            .AccountSessions.AsNoTracking()
            .Where(s => s.AccountId == account.Id)
            .OrderBy(s => s.EndedAt != null)
            .ThenByDescending(s => s.LastSeenAt)
            .Take(MostListed)
            .ToListAsync(cancellation);
        return [.. sessions.OrderByDescending(s => StateOf(s) == SessionState.Open)];
    }

    /// <summary>Whether a session is good now.</summary>
    public SessionState StateOf(AccountSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        return session.StateAt(clock.GetUtcNow());
    }

    /// <summary>Ends one session of one's own, or all others; the password proves that it is its owner who does (OWASP ASVS 5.0, 7.5.2).</summary>
    public async Task<Outcome> EndAsync(
        EndSessionForm form,
        HttpContext http,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var account = await means.AccountAsync(http);
        var proved = await means.ProveAsync(account, form.Password);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var now = clock.GetUtcNow();
        if (form.Which == AllOthers)
        {
            await db.EndSessionsAsync(
                account.Id,
                ThisOne(http),
                SessionEnd.OwnerElsewhere,
                now,
                cancellation
            );
        }
        else
        {
            _ = Guid.TryParse(form.Which, out var id);
            var session = await db.AccountSessions.SingleOrDefaultAsync(
                s => s.Id == id && s.AccountId == account.Id,
                cancellation
            );
            if (session?.StateAt(now) is not SessionState.Open)
            {
                return Outcome.Refused(
                    "missing",
                    "You have no such session that is still open; load the page anew.",
                    nameof(form.Which)
                );
            }

            session.End(SessionEnd.OwnerElsewhere, now);
        }

        await db.SaveChangesAsync(cancellation);
        return Outcome.Accepted;
    }
}
