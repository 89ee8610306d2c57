using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Access;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>Checks the PIN of a person on one shared tablet. It is held up like a password, and erased after a few wrong ones.</summary>
public sealed partial class PinCheck(
    IDbContextFactory<WeldTraceDbContext> contexts,
    IPasswordHasher<Account> hasher,
    TimeProvider clock,
    ILogger<PinCheck> logger
)
{
    /// <param name="account">Whose PIN it should be; null when nobody is known by what was scanned or typed.</param>
    /// <param name="tablet">Tablet on which it is given.</param>
    /// <param name="pin">What was typed.</param>
    /// <param name="wrong">What to say when it is wrong, or there is none.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<Outcome> CheckAsync(
        Account? account,
        SharedTablet tablet,
        string pin,
        Refusal wrong,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(tablet);
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var kept = await FindAsync(db, account, tablet, cancellation);
        if (kept is null)
        {
            // As slow as for somebody who has one.
            hasher.HashPassword(new Account { PersonId = Guid.Empty }, pin);
            return Outcome.From([wrong]);
        }

        var now = clock.GetUtcNow();
        var row = db.AccountPins.Where(p =>
            p.AccountId == kept.AccountId && p.TabletId == tablet.Id
        );
        // It counts as wrong until it is known to be right, so that many at once are not let in together.
        var counted = await row.Where(p =>
                p.WrongInARow < PinRules.MostWrong && (p.HeldUntil == null || p.HeldUntil <= now)
            )
            .ExecuteUpdateAsync(
                change => change.SetProperty(p => p.WrongInARow, p => p.WrongInARow + 1),
                cancellation
            );
        if (counted == 0)
        {
            return HeldUp(kept.HeldUntil - now);
        }

        if (
            hasher.VerifyHashedPassword(account!, kept.PinHash, pin)
            != PasswordVerificationResult.Failed
        )
        {
            await HoldAsync(row, 0, null, cancellation);
            return Outcome.Accepted;
        }

        var failures = await row.Select(p => p.WrongInARow).SingleAsync(cancellation);
        LogWrong(logger, account!.PersonId, tablet.Id, failures);
        if (failures >= PinRules.MostWrong)
        {
            return await EraseAsync(account, tablet, cancellation);
        }

        await HoldAsync(row, failures, now + PasswordCheck.DelayAfter(failures), cancellation);
        return Outcome.From([wrong]);
    }

    private static Task<AccountPin?> FindAsync(
        WeldTraceDbContext db,
        Account? account,
        SharedTablet tablet,
        CancellationToken cancellation
    ) =>
        account is null || PasswordCheck.IsLocked(account) || account.MustChangePassword
            ? Task.FromResult<AccountPin?>(null)
            : db
                .AccountPins.AsNoTracking()
                .SingleOrDefaultAsync(
                    p => p.AccountId == account.Id && p.TabletId == tablet.Id,
                    cancellation
                );

    private static Task<int> HoldAsync(
        IQueryable<AccountPin> row,
        int wrong,
        DateTimeOffset? until,
        CancellationToken cancellation
    ) =>
        row.ExecuteUpdateAsync(
            change =>
                change.SetProperty(p => p.WrongInARow, wrong).SetProperty(p => p.HeldUntil, until),
            cancellation
        );

    private static Outcome HeldUp(TimeSpan? wait) =>
        Outcome.Refused(
            "delay",
            FormattableString.Invariant(
                $"Several wrong PINs in a row: wait {Math.Max(1, Math.Ceiling(wait?.TotalSeconds ?? 1)):0} s, then try again, or give your password."
            ),
            "Secret"
        );

    private async Task<Outcome> EraseAsync(
        Account account,
        SharedTablet tablet,
        CancellationToken cancellation
    )
    {
        await using var db = await contexts.CreateDbContextAsync(cancellation);
        var person = await db.People.SingleAsync(p => p.Id == account.PersonId, cancellation);
        person.LosePin(tablet, clock.GetUtcNow());
        db.AccountPins.RemoveRange(
            await db
                .AccountPins.Where(p => p.AccountId == account.Id && p.TabletId == tablet.Id)
                .ToListAsync(cancellation)
        );
        await db.SaveAsync(cancellation);
        LogErased(logger, account.PersonId, tablet.Id);
        return Outcome.Refused(
            "erased",
            "That was wrong too often: the PIN on this tablet is erased. Give your password, then set a new PIN in your account.",
            "Secret"
        );
    }

    [LoggerMessage(
        LogLevel.Warning,
        "A wrong PIN was given for person {Person} on tablet {Tablet}: {Failures} in a row."
    )]
    private static partial void LogWrong(ILogger logger, Guid person, Guid tablet, int failures);

    [LoggerMessage(
        LogLevel.Error,
        "The PIN of person {Person} on tablet {Tablet} was erased after too many wrong ones."
    )]
    private static partial void LogErased(ILogger logger, Guid person, Guid tablet);
}
