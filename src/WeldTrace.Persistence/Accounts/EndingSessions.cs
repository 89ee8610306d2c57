using Microsoft.EntityFrameworkCore;

namespace WeldTrace.Persistence.Accounts;

public static class EndingSessions
{
    /// <summary>Ends the sessions of an account with the next save.</summary>
    /// <param name="db">Where they are.</param>
    /// <param name="accountId">Whose they are.</param>
    /// <param name="but">The session that goes on; null when all end.</param>
    /// <param name="because">Why.</param>
    /// <param name="at">UTC instant.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task EndSessionsAsync(
        this WeldTraceDbContext db,
        Guid accountId,
        Guid? but,
        SessionEnd because,
        DateTimeOffset at,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        var open = await db
            .AccountSessions.Where(s =>
                s.AccountId == accountId && s.EndedAt == null && s.Id != but
            )
            .ToListAsync(cancellation);
        foreach (var session in open)
        {
            session.End(because, at);
        }
    }

    /// <summary>Erases the PINs of an account on every tablet with the next save.</summary>
    public static async Task ErasePinsAsync(
        this WeldTraceDbContext db,
        Guid accountId,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(db);
        db.AccountPins.RemoveRange(
            await db.AccountPins.Where(p => p.AccountId == accountId).ToListAsync(cancellation)
        );
    }
}
