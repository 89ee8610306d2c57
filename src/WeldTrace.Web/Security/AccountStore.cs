using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Persistence;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Security;

/// <summary>
/// Accounts in the database. The key of the authenticator app is sealed for its account by a key of the data folder, and recovery codes
/// are hashed as passwords are, so that whoever reads the database alone has no second factor of anybody (OWASP ASVS 5.0, 6.5.2).
/// </summary>
public sealed class AccountStore(
    WeldTraceDbContext db,
    IDataProtectionProvider protection,
    IPasswordHasher<Account> hasher
) : UserOnlyStore<Account, WeldTraceDbContext, Guid>(db)
{
    private const string Purpose = "authenticator-key";
    private const string Sealed = "sealed:";
    private const char Between = ';';

    // Names under which the base class keeps both; every version of this site has written them.
    private const string Provider = "[AspNetUserStore]";
    private const string KeyName = "AuthenticatorKey";
    private const string CodesName = "RecoveryCodes";

    /// <inheritdoc/>
    public override Task SetAuthenticatorKeyAsync(
        Account user,
        string key,
        CancellationToken cancellationToken
    )
    {
        ArgumentNullException.ThrowIfNull(user);
        return base.SetAuthenticatorKeyAsync(user, Seal(user.Id, key), cancellationToken);
    }

    /// <inheritdoc/>
    public override async Task<string?> GetAuthenticatorKeyAsync(
        Account user,
        CancellationToken cancellationToken
    )
    {
        ArgumentNullException.ThrowIfNull(user);
        var kept = await base.GetAuthenticatorKeyAsync(user, cancellationToken);
        if (kept?.StartsWith(Sealed, StringComparison.Ordinal) is not true)
        {
            return null;
        }

        try
        {
            return ProtectorOf(user.Id).Unprotect(kept[Sealed.Length..]);
        }
        catch (CryptographicException)
        {
            // Sealed for another account, or by a key that the data folder has lost: no code is right, and an administrator resets it.
            return null;
        }
    }

    /// <inheritdoc/>
    public override Task ReplaceCodesAsync(
        Account user,
        IEnumerable<string> recoveryCodes,
        CancellationToken cancellationToken
    )
    {
        ArgumentNullException.ThrowIfNull(user);
        return base.ReplaceCodesAsync(
            user,
            recoveryCodes.Select(code => hasher.HashPassword(user, code)),
            cancellationToken
        );
    }

    /// <inheritdoc/>
    public override async Task<bool> RedeemCodeAsync(
        Account user,
        string code,
        CancellationToken cancellationToken
    )
    {
        ArgumentNullException.ThrowIfNull(user);
        var kept = await GetTokenAsync(user, Provider, CodesName, cancellationToken) ?? "";
        var hashes = kept.Split(Between, StringSplitOptions.RemoveEmptyEntries);
        var used = hashes.FirstOrDefault(hash =>
            hasher.VerifyHashedPassword(user, hash, code) != PasswordVerificationResult.Failed
        );
        if (used is null)
        {
            return false;
        }

        await base.ReplaceCodesAsync(user, hashes.Where(hash => hash != used), cancellationToken);
        return true;
    }

    /// <summary>Seals and hashes what an earlier version wrote as it was.</summary>
    public async Task UpgradeAsync(CancellationToken cancellation)
    {
        var plain = await Context
            .UserTokens.Where(t =>
                t.LoginProvider == Provider
                && (
                    (t.Name == KeyName && !t.Value!.StartsWith(Sealed))
                    // A hash is base64, which has no hyphen; a code has one.
                    || (t.Name == CodesName && EF.Functions.Like(t.Value!, "%-%"))
                )
            )
            .ToListAsync(cancellation);
        foreach (var token in plain)
        {
            token.Value =
                token.Name == KeyName
                    ? Seal(token.UserId, token.Value!)
                    : string.Join(Between, token.Value!.Split(Between).Select(HashOf));
        }

        await Context.SaveChangesAsync(cancellation);

        // The hash has a salt of its own; whose it is does not count.
        string HashOf(string code) =>
            hasher.HashPassword(new Account { PersonId = Guid.Empty }, code);
    }

    private string Seal(Guid account, string key) => Sealed + ProtectorOf(account).Protect(key);

    private IDataProtector ProtectorOf(Guid account) =>
        protection.CreateProtector(Purpose, account.ToString("D"));
}
