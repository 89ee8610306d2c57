using System.Net;
using Microsoft.AspNetCore.Identity;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.SignIn;

public sealed partial class SignInHandler(
    SignInManager<Account> signIn,
    PasswordCheck passwords,
    ActivePeople people,
    SignInLimit limit,
    SessionBook sessions,
    ILogger<SignInHandler> logger
)
{
    private const string Wrong =
        "Sign-in name or password is not right. Check both; capital letters count in the password.";

    public async Task<Outcome> HandleAsync(SignInForm form, HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(http);
        var address = http.Connection.RemoteIpAddress;
        if (!limit.TryEnter(address))
        {
            LogHeldUp(logger, address);
            return TooMany;
        }

        var account = await signIn.UserManager.FindByNameAsync(form.Name?.Trim() ?? "");
        if (account is not null && !await people.IsActiveAsync(account.PersonId))
        {
            account = null;
        }

        var outcome = await passwords.CheckAsync(account, form.Password, Wrong);
        if (!outcome.IsAccepted)
        {
            LogRefused(logger, address);
            return outcome;
        }

        limit.WasRight(address);
        if (http.User.FindFirst(AccountClaims.Session) is { } before)
        {
            sessions.End(before.Value);
        }

        await signIn.SignInAsync(account!, isPersistent: false);
        LogSignedIn(logger, account!.PersonId, address);
        return outcome;
    }

    private static Outcome TooMany =>
        Outcome.Refused(
            "address",
            FormattableString.Invariant(
                $"Too many wrong sign-ins came from this network address. Wait {SignInLimit.Window.TotalMinutes:0} minutes, then try again; whoever is signed in already can go on."
            ),
            nameof(SignInForm.Password)
        );

    [LoggerMessage(LogLevel.Information, "Person {Person} signed in from {Address}.")]
    private static partial void LogSignedIn(ILogger logger, Guid person, IPAddress? address);

    [LoggerMessage(LogLevel.Warning, "A sign-in from {Address} was refused.")]
    private static partial void LogRefused(ILogger logger, IPAddress? address);

    [LoggerMessage(
        LogLevel.Error,
        "A sign-in from {Address} was not looked at: too many wrong ones came from there."
    )]
    private static partial void LogHeldUp(ILogger logger, IPAddress? address);
}
