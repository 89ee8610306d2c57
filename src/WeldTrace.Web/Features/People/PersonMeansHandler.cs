using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.People;

public sealed class ResetMeansForm
{
    public string? Reason { get; set; }
}

public sealed class EndSessionsForm
{
    public string? Reason { get; set; }
}

/// <summary>What an administrator does about the means by which somebody else signs in.</summary>
public sealed class PersonMeansHandler(
    IDbContextFactory<WeldTraceDbContext> contexts,
    TimeProvider clock
)
{
    /// <summary>Whether somebody has a second factor, a passkey or a PIN.</summary>
    public async Task<bool> HasMoreThanPasswordAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        return await db.Users.AnyAsync(
            a =>
                a.PersonId == id
                && (
                    a.TwoFactorEnabled
                    || db.UserPasskeys.Any(p => p.UserId == a.Id)
                    || db.AccountPins.Any(p => p.AccountId == a.Id)
                ),
            cancellation
        );
    }

    /// <summary>Whether somebody is signed in anywhere.</summary>
    public async Task<bool> IsSignedInAsync(Guid id, CancellationToken cancellation)
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var sessions = await db
            .AccountSessions.AsNoTracking()
            .Where(s => s.EndedAt == null)
            .Join(db.Users.Where(a => a.PersonId == id), s => s.AccountId, a => a.Id, (s, _) => s)
            .ToListAsync(cancellation);
        return sessions.Any(s => s.StateAt(clock.GetUtcNow()) == SessionState.Open);
    }

    /// <summary>Ends every session of the person; whoever knows the password can sign in again.</summary>
    public Task<Outcome> EndSessionsAsync(
        Guid id,
        EndSessionsForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return ChangeMeansAsync(
            id,
            (SignInMeans.SessionsEnded, form.Reason),
            actor,
            (_, _) => Task.CompletedTask,
            cancellation
        );
    }

    /// <summary>Takes second factor, passkeys and PINs away, and ends every session of the person.</summary>
    public Task<Outcome> ResetMeansAsync(
        Guid id,
        ResetMeansForm form,
        Actor actor,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        return ChangeMeansAsync(
            id,
            (SignInMeans.Reset, form.Reason),
            actor,
            async (db, account) =>
            {
                account.TwoFactorEnabled = false;
                await db.ErasePinsAsync(account.Id, cancellation);
                account.SecurityStamp = NewAccount.Stamp();
                db.UserPasskeys.RemoveRange(
                    await db
                        .UserPasskeys.Where(p => p.UserId == account.Id)
                        .ToListAsync(cancellation)
                );
            },
            cancellation
        );
    }

    private async Task<Outcome> ChangeMeansAsync(
        Guid id,
        (SignInMeans Means, string? Reason) what,
        Actor actor,
        Func<WeldTraceDbContext, Account, Task> change,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var person = await db.People.SingleOrDefaultAsync(p => p.Id == id, cancellation);
        var account = await db.Users.SingleOrDefaultAsync(a => a.PersonId == id, cancellation);
        if (person is null || account is null)
        {
            return Outcome.Refused("person", "There is no such person.");
        }

        var stated = person.ChangeSignInMeans(what.Means, what.Reason, actor, clock.GetUtcNow());
        if (!stated.IsAccepted)
        {
            return stated;
        }

        await change(db, account);
        await db.EndSessionsAsync(
            account.Id,
            null,
            SessionEnd.Administrator,
            clock.GetUtcNow(),
            cancellation
        );
        return await db.SaveAsync(cancellation);
    }
}
