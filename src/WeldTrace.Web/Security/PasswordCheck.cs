using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>Checks a password at sign-in and at each signature, with a delay that grows with each failure.</summary>
public sealed partial class PasswordCheck(
    UserManager<Account> accounts,
    ISigningSession session,
    SecondFactor factor,
    TimeProvider clock,
    ILogger<PasswordCheck> logger
)
{
    /// <summary>After so many failures in a row the account waits for the administrator (NIST SP 800-63B 5.2.2).</summary>
    public const int MostFailures = 100;

    private const int FreeFailures = 3;
    private static readonly TimeSpan LongestDelay = TimeSpan.FromHours(1);

    /// <summary>Checks the password of whoever signs a record.</summary>
    public async Task<Outcome> ForSignatureAsync(
        Actor actor,
        string? password,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var account = await accounts.Users.SingleOrDefaultAsync(
            a => a.PersonId == actor.PersonId,
            cancellation
        );
        if (account is { MustChangePassword: true })
        {
            return Outcome.Refused(
                "password",
                "Someone else set your password; change it before you sign.",
                "Password"
            );
        }

        if (await session.PasskeyAsync() is { } passkey)
        {
            return await PasskeyAsync(passkey, account);
        }

        if (session.AsksForName && !IsNameOf(account, session.TypedName))
        {
            return Outcome.Refused(
                "name",
                string.IsNullOrWhiteSpace(session.TypedName)
                    ? "This is your first signature since you signed in: give your sign-in name too."
                    : "That is not the sign-in name of whoever is signed in here; nothing was signed. Give your own, or sign out first.",
                ISigningSession.Field
            );
        }

        var outcome = await CheckAsync(
            account,
            password,
            "Your password is not right; nothing was signed. Try again.",
            session.AsksForName ? new TypedCode(session.TypedCode, ISigningSession.CodeField) : null
        );
        if (outcome.IsAccepted)
        {
            await session.BeginAsync();
        }

        return outcome;
    }

    /// <summary>Checks a password and counts failures.</summary>
    /// <param name="account">The account; null when the name is unknown. That, and an account without a password, is told in the same words.</param>
    /// <param name="password">What was typed.</param>
    /// <param name="wrong">What to say when it is wrong.</param>
    /// <param name="code">Code of the second factor, where one that was set up is asked for too; null where it is not.</param>
    public async Task<Outcome> CheckAsync(
        Account? account,
        string? password,
        string wrong,
        TypedCode? code = null
    )
    {
        if (account?.PasswordHash is null)
        {
            accounts.PasswordHasher.HashPassword(
                new Account { PersonId = Guid.Empty },
                password ?? ""
            );
            LogUnknown(logger);
            return Outcome.Refused("password", wrong, "Password");
        }

        var now = clock.GetUtcNow();
        if (HeldUp(account, now) is { } heldUp)
        {
            return heldUp;
        }

        if (await accounts.CheckPasswordAsync(account, password ?? ""))
        {
            if (
                code is not null
                && account.TwoFactorEnabled
                && await RefusalOfCodeAsync(account, code, now) is { } refused
            )
            {
                return refused;
            }

            await ForgetFailuresAsync(account);
            return Outcome.Accepted;
        }

        await CountAsync(account, now);
        LogWrong(logger, account.PersonId, account.AccessFailedCount);
        return Outcome.Refused("password", wrong, "Password");
    }

    /// <summary>Whether the account waits for the administrator.</summary>
    internal static bool IsLocked(Account account) => account.AccessFailedCount >= MostFailures;

    /// <summary>How long nothing is looked at after so many failures in a row; null when the next may come at once.</summary>
    internal static TimeSpan? DelayAfter(int failures)
    {
        if (failures <= FreeFailures)
        {
            return null;
        }

        var seconds = Math.Pow(2, Math.Min(failures - FreeFailures, 16));
        return seconds < LongestDelay.TotalSeconds ? TimeSpan.FromSeconds(seconds) : LongestDelay;
    }

    private Outcome? HeldUp(Account account, DateTimeOffset now)
    {
        if (IsLocked(account))
        {
            LogLocked(logger, account.PersonId);
            return Outcome.Refused(
                "locked",
                "Too many wrong passwords: the account is locked. The administrator can set a new password.",
                "Password"
            );
        }

        if (account.LockoutEnd > now)
        {
            var seconds = Math.Ceiling((account.LockoutEnd.Value - now).TotalSeconds);
            return Outcome.Refused(
                "delay",
                FormattableString.Invariant(
                    $"Several wrong passwords or passkeys in a row: wait {seconds:0} s, then try again."
                ),
                "Password"
            );
        }

        return null;
    }

    private async Task<Outcome> PasskeyAsync(PasskeyProof proof, Account? account)
    {
        var now = clock.GetUtcNow();
        if (account is not null && HeldUp(account, now) is { } heldUp)
        {
            return heldUp;
        }

        if (account is null || proof.PersonId != account.PersonId)
        {
            if (account is not null)
            {
                await CountAsync(account, now);
                LogPasskey(logger, account.PersonId, account.AccessFailedCount);
            }

            return Outcome.Refused(
                "passkey",
                "The passkey did not prove that it is you; nothing was signed. Try it again, or give your password.",
                "Password"
            );
        }

        await ForgetFailuresAsync(account);
        await session.BeginAsync();
        return Outcome.Accepted;
    }

    private async Task<Outcome?> RefusalOfCodeAsync(
        Account account,
        TypedCode code,
        DateTimeOffset now
    )
    {
        if (string.IsNullOrWhiteSpace(code.Text))
        {
            return Outcome.Refused(
                "code",
                "Give the code that your authenticator app shows now too, or one of your recovery codes.",
                code.Field
            );
        }

        if (await factor.IsRightAsync(account, code.Text))
        {
            return null;
        }

        await CountAsync(account, now);
        LogCode(logger, account.PersonId, account.AccessFailedCount);
        return Outcome.Refused(
            "code",
            "The code is not right, or was used already. Wait for the next one of your app; check the clock of the phone if that fails too.",
            code.Field
        );
    }

    // The database counts, so that wrong passwords that arrive at the same instant count each.
    private async Task CountAsync(Account account, DateTimeOffset now)
    {
        var row = accounts.Users.Where(a => a.Id == account.Id);
        await row.ExecuteUpdateAsync(change =>
            change.SetProperty(a => a.AccessFailedCount, a => a.AccessFailedCount + 1)
        );
        var failures = await row.Select(a => a.AccessFailedCount).SingleAsync();
        var until = now + DelayAfter(failures);
        await row.ExecuteUpdateAsync(change => change.SetProperty(a => a.LockoutEnd, until));
        (account.AccessFailedCount, account.LockoutEnd) = (failures, until);
    }

    private async Task ForgetFailuresAsync(Account account)
    {
        if (account.AccessFailedCount > 0)
        {
            (account.AccessFailedCount, account.LockoutEnd) = (0, null);
            await accounts.UpdateAsync(account);
        }
    }

    private bool IsNameOf(Account? account, string? typed) =>
        account is not null
        && !string.IsNullOrWhiteSpace(typed)
        && accounts.NormalizeName(typed.Trim()) == account.NormalizedUserName;

    // What was typed is never logged: a password lands in the field of the name easily.
    [LoggerMessage(LogLevel.Warning, "A sign-in was refused: no account of that name.")]
    private static partial void LogUnknown(ILogger logger);

    [LoggerMessage(
        LogLevel.Warning,
        "A wrong password was given for person {Person}: {Failures} in a row."
    )]
    private static partial void LogWrong(ILogger logger, Guid person, int failures);

    [LoggerMessage(
        LogLevel.Warning,
        "A wrong code of the second factor was given for person {Person}: {Failures} in a row."
    )]
    private static partial void LogCode(ILogger logger, Guid person, int failures);

    [LoggerMessage(
        LogLevel.Warning,
        "A passkey that proved nothing was given at a signature of person {Person}: {Failures} in a row."
    )]
    private static partial void LogPasskey(ILogger logger, Guid person, int failures);

    [LoggerMessage(
        LogLevel.Error,
        "The account of person {Person} is locked after too many wrong passwords, and was tried again."
    )]
    private static partial void LogLocked(ILogger logger, Guid person);
}

/// <summary>A code of the second factor as it was typed.</summary>
/// <param name="Text">What was typed; null when nothing was.</param>
/// <param name="Field">Field that it stands in.</param>
public sealed record TypedCode(string? Text, string Field);
