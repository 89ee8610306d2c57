using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.OwnAccount.SecondFactor;

public sealed class SecondFactorForm
{
    public string? Password { get; set; }

    public string? Code { get; set; }
}

/// <summary>Sets up and gives up the codes of an authenticator app as a second factor.</summary>
public sealed class SecondFactorHandler(OwnMeansHandler means, Security.SecondFactor factor)
{
    /// <summary>The account of whoever asks.</summary>
    public Task<Account> AccountAsync(HttpContext http) => means.AccountAsync(http);

    /// <summary>A new key to scan; it counts once its first code was given.</summary>
    public async Task<Outcome<string>> BeginAsync(
        Account account,
        SecondFactorForm form,
        string site
    )
    {
        ArgumentNullException.ThrowIfNull(account);
        ArgumentNullException.ThrowIfNull(form);
        if (account.TwoFactorEnabled)
        {
            return new Refusal("state", "A second factor is set up already; give it up first.");
        }

        var proved = await means.ProveAsync(account, form.Password);
        if (!proved.IsAccepted)
        {
            return proved.Refusals.ToList();
        }

        var key = await factor.NewKeyAsync(account);
        await means.GoOnAloneAsync(account);
        return AddressOf(account, site, key);
    }

    /// <summary>The key that waits for its first code, as an address that authenticator apps read.</summary>
    public async Task<string> WaitingAsync(Account account, string site) =>
        AddressOf(account, site, await factor.KeyAsync(account));

    /// <summary>Takes the first code, after which one is asked for at each sign-in; gives the recovery codes.</summary>
    public async Task<Outcome<IReadOnlyList<string>>> ConfirmAsync(
        Account account,
        SecondFactorForm form,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(account);
        ArgumentNullException.ThrowIfNull(form);
        if (account.TwoFactorEnabled || !await factor.IsRightAsync(account, form.Code))
        {
            return new Refusal(
                "code",
                "The code is not the one that the app shows now. Wait for the next one, and type it in.",
                nameof(form.Code)
            );
        }

        var codes = await factor.NewRecoveryCodesAsync(account);
        var changed = await means.ChangeAsync(
            account,
            SignInMeans.SecondFactorSetUp,
            null,
            (_, kept) =>
            {
                (account.TwoFactorEnabled, kept.TwoFactorEnabled) = (true, true);
                return Task.CompletedTask;
            },
            cancellation
        );
        return changed.IsAccepted ? new List<string>(codes) : changed.Refusals.ToList();
    }

    /// <summary>Gives it up; password and code prove that it is its owner who does.</summary>
    public async Task<Outcome> RemoveAsync(
        Account account,
        SecondFactorForm form,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(account);
        ArgumentNullException.ThrowIfNull(form);
        var proved = await means.ProveAsync(
            account,
            form.Password,
            new TypedCode(form.Code, nameof(form.Code))
        );
        return !proved.IsAccepted
            ? proved
            : await means.ChangeAsync(
                account,
                SignInMeans.SecondFactorRemoved,
                null,
                (_, kept) =>
                {
                    (account.TwoFactorEnabled, kept.TwoFactorEnabled) = (false, false);
                    return Task.CompletedTask;
                },
                cancellation
            );
    }

    // The form that authenticator apps share; 6 digits each 30 s are what they take when nothing is said.
    private static string AddressOf(Account account, string site, string key) =>
        $"otpauth://totp/{Uri.EscapeDataString($"{site}:{account.UserName}")}?secret={key}&issuer={Uri.EscapeDataString(site)}";
}
