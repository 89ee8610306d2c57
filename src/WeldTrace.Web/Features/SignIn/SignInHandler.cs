using Microsoft.AspNetCore.Identity;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.SignIn;

public sealed class SignInHandler(
    SignInManager<Account> signIn,
    PasswordCheck passwords,
    ActivePeople people
)
{
    private const string Wrong =
        "Sign-in name or password is not right. Check both; capital letters count in the password.";

    public async Task<Outcome> HandleAsync(SignInForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        var account = await signIn.UserManager.FindByNameAsync(form.Name?.Trim() ?? "");
        if (account is not null && !await people.IsActiveAsync(account.PersonId))
        {
            account = null;
        }

        var outcome = await passwords.CheckAsync(account, form.Password, Wrong);
        if (outcome.IsAccepted)
        {
            await signIn.SignInAsync(account!, isPersistent: false);
        }

        return outcome;
    }
}
