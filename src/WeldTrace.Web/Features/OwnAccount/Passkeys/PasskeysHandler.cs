using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;

namespace WeldTrace.Web.Features.OwnAccount.Passkeys;

public sealed class PasskeyForm
{
    public string? Name { get; set; }

    public string? Password { get; set; }

    /// <summary>The browser's new passkey, as JSON.</summary>
    public string? Credential { get; set; }
}

public sealed class RemovePasskeyForm
{
    /// <summary>Identity of the passkey, base64.</summary>
    public string? Id { get; set; }

    public string? Password { get; set; }
}

/// <summary>Adds and removes passkeys of one's own.</summary>
public sealed class PasskeysHandler(
    OwnMeansHandler means,
    SignInManager<Account> signIn,
    UserManager<Account> accounts
)
{
    private const int MostPasskeys = 20;

    public async Task<IReadOnlyList<UserPasskeyInfo>> ListAsync(HttpContext http) =>
        [.. await accounts.GetPasskeysAsync(await means.AccountAsync(http))];

    /// <summary>What the browser needs to make a passkey for whoever asks.</summary>
    public async Task<string> CreationOptionsAsync(HttpContext http)
    {
        var account = await means.AccountAsync(http);
        return await signIn.MakePasskeyCreationOptionsAsync(
            new()
            {
                Id = account.Id.ToString("D"),
                Name = account.UserName!,
                DisplayName = account.UserName!,
            }
        );
    }

    /// <summary>A challenge for the passkeys of whoever asks; for any passkey, when nobody is signed in.</summary>
    public async Task<string> ChallengeAsync(HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(http);
        return await signIn.MakePasskeyRequestOptionsAsync(await accounts.GetUserAsync(http.User));
    }

    public async Task<Outcome> AddAsync(
        PasskeyForm form,
        HttpContext http,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(form);
        var account = await means.AccountAsync(http);
        var name = form.Name?.Trim() ?? "";
        if (name.Length is 0 or > Person.LongestName)
        {
            return Outcome.Refused(
                "name",
                $"Name the device that keeps the passkey, 1 to {Person.LongestName} characters.",
                nameof(form.Name)
            );
        }

        var proved = await means.ProveAsync(account, form.Password);
        if (!proved.IsAccepted)
        {
            return proved;
        }

        if ((await accounts.GetPasskeysAsync(account)).Count >= MostPasskeys)
        {
            return Outcome.Refused(
                "passkeys",
                $"You have {MostPasskeys} passkeys already; remove one that you no longer use, then add this one."
            );
        }

        if (await MadeAsync(account, form.Credential) is not { } made)
        {
            return Outcome.Refused(
                "passkey",
                "The browser's passkey did not arrive whole, or belongs to an earlier try. Press the button again."
            );
        }

        return await means.ChangeAsync(
            account,
            SignInMeans.PasskeyAdded,
            name,
            (db, kept) =>
            {
                db.UserPasskeys.Add(RowOf(kept, name, made));
                return Task.CompletedTask;
            },
            cancellation
        );
    }

    public async Task<Outcome> RemoveAsync(
        RemovePasskeyForm form,
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

        var mine = await accounts.GetPasskeysAsync(account);
        return
            mine.FirstOrDefault(p => Convert.ToBase64String(p.CredentialId) == form.Id)
                is not { } passkey
            ? Outcome.Refused(
                "missing",
                "You have no such passkey; load the page anew.",
                nameof(form.Id)
            )
            : await means.ChangeAsync(
                account,
                SignInMeans.PasskeyRemoved,
                passkey.Name,
                async (db, _) =>
                    db.UserPasskeys.Remove(
                        await db.UserPasskeys.SingleAsync(
                            p => p.CredentialId == passkey.CredentialId,
                            cancellation
                        )
                    ),
                cancellation
            );
    }

    private async Task<UserPasskeyInfo?> MadeAsync(Account account, string? credential)
    {
        if (string.IsNullOrEmpty(credential))
        {
            return null;
        }

        try
        {
            var made = await signIn.PerformPasskeyAttestationAsync(credential);
            return made.Succeeded && made.UserEntity.Id == account.Id.ToString("D")
                ? made.Passkey
                : null;
        }
        catch (InvalidOperationException)
        {
            // No options were given out, or they were answered already.
            return null;
        }
    }

    private static IdentityUserPasskey<Guid> RowOf(
        Account account,
        string name,
        UserPasskeyInfo made
    ) =>
        new()
        {
            UserId = account.Id,
            CredentialId = made.CredentialId,
            Data = new IdentityPasskeyData
            {
                PublicKey = made.PublicKey,
                Name = name,
                CreatedAt = made.CreatedAt,
                SignCount = made.SignCount,
                Transports = made.Transports,
                IsUserVerified = made.IsUserVerified,
                IsBackupEligible = made.IsBackupEligible,
                IsBackedUp = made.IsBackedUp,
                AttestationObject = made.AttestationObject,
                ClientDataJson = made.ClientDataJson,
            },
        };
}
