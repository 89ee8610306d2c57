using Microsoft.AspNetCore.Identity;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.SignIn;

public sealed class SignInHandler(
    SignInManager<Account> signIn,
    PasswordCheck passwords,
    ActivePeople people,
    Entrance entrance
)
{
    private const string Wrong =
        "Sign-in name or password is not right. Check both; capital letters count in the password.";

    public Task<Outcome> HandleAsync(SignInForm form, HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(form);
        return entrance.EnterAsync(http, nameof(form.Password), () => ProveAsync(form));
    }

    /// <summary>Signs in by a passkey, which says itself whose it is.</summary>
    public Task<Outcome> HandleAsync(PasskeySignInForm form, HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(form);
        return entrance.EnterAsync(http, nameof(SignInForm.Password), () => ProveAsync(form));
    }

    private async Task<Proof> ProveAsync(SignInForm form)
    {
        var account = await signIn.UserManager.FindByNameAsync(form.Name?.Trim() ?? "");
        if (account is not null && !await people.IsActiveAsync(account.PersonId))
        {
            account = null;
        }

        var outcome = await passwords.CheckAsync(
            account,
            form.Password,
            Wrong,
            new TypedCode(form.Code, nameof(form.Code))
        );
        return new Proof(outcome, account, SignInWay.Password);
    }

    private async Task<Proof> ProveAsync(PasskeySignInForm form)
    {
        var account = await signIn.ProveAsync(form.Credential);
        var outcome =
            account is null || !await people.IsActiveAsync(account.PersonId)
                ? Outcome.Refused(
                    "passkey",
                    "The passkey proved nothing here. Try it again, or give name and password."
                )
                : Outcome.Accepted;
        return new Proof(outcome, account, SignInWay.Passkey);
    }
}
