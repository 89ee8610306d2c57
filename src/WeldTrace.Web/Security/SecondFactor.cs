using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using OtpNet;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>The codes of an authenticator app (RFC 6238), and the recovery codes for when it is lost.</summary>
public sealed class SecondFactor(UserManager<Account> accounts, TimeProvider clock)
{
    /// <summary>Recovery codes given at once; each is good for one time.</summary>
    public const int RecoveryCodes = 10;

    private const int Digits = 6;

    /// <summary>Makes a new key, which counts only after its first code was given.</summary>
    public async Task<string> NewKeyAsync(Account account)
    {
        await accounts.ResetAuthenticatorKeyAsync(account);
        return await KeyAsync(account);
    }

    /// <summary>The key as it is typed or scanned into the app: base32.</summary>
    public async Task<string> KeyAsync(Account account) =>
        await accounts.GetAuthenticatorKeyAsync(account) ?? "";

    /// <summary>New recovery codes; earlier ones are worth nothing from then on.</summary>
    public async Task<IReadOnlyList<string>> NewRecoveryCodesAsync(Account account) =>
        [.. await accounts.GenerateNewTwoFactorRecoveryCodesAsync(account, RecoveryCodes) ?? []];

    /// <summary>Whether a code is right: of the app, now and not taken before, or one of the recovery codes, which is then used up.</summary>
    public async Task<bool> IsRightAsync(Account account, string? typed)
    {
        ArgumentNullException.ThrowIfNull(account);
        var code = string.Concat((typed ?? "").Where(c => !char.IsWhiteSpace(c)));
        return code.Length == Digits && code.All(char.IsAsciiDigit)
            ? await TakeAsync(account, code)
            : code.Length > Digits
                && (await accounts.RedeemTwoFactorRecoveryCodeAsync(account, code)).Succeeded;
    }

    // One step of 30 s before and after is taken, as RFC 6238 5.2 recommends; the database sees to it that none is taken twice.
    private async Task<bool> TakeAsync(Account account, string code)
    {
        if (await KeyAsync(account) is not { Length: > 0 } key)
        {
            return false;
        }

        var isRight = new Totp(Base32Encoding.ToBytes(key)).VerifyTotp(
            clock.GetUtcNow().UtcDateTime,
            code,
            out var step,
            VerificationWindow.RfcSpecifiedNetworkDelay
        );
        if (!isRight)
        {
            return false;
        }

        var taken = await accounts
            .Users.Where(a =>
                a.Id == account.Id && (a.LastCodeStep == null || a.LastCodeStep < step)
            )
            .ExecuteUpdateAsync(change => change.SetProperty(a => a.LastCodeStep, step));
        if (taken == 1)
        {
            // A later save of the account writes all of it.
            account.LastCodeStep = step;
        }

        return taken == 1;
    }
}
