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
    Sessions sessions,
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

        var outcome = await passwords.CheckAsync(
            account,
            form.Password,
            Wrong,
            new TypedCode(form.Code, nameof(form.Code))
        );
        if (!outcome.IsAccepted)
        {
            LogRefused(logger, address);
            return outcome;
        }

        await EnterAsync(account!, SignInWay.Password, http);
        return outcome;
    }

    /// <summary>Signs in by a passkey, which says itself whose it is.</summary>
    public async Task<Outcome> HandleAsync(PasskeySignInForm form, HttpContext http)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(http);
        var address = http.Connection.RemoteIpAddress;
        if (!limit.TryEnter(address))
        {
            LogHeldUp(logger, address);
            return TooMany;
        }

        var account = await signIn.ProveAsync(form.Credential);
        if (account is null || !await people.IsActiveAsync(account.PersonId))
        {
            LogRefused(logger, address);
            return Outcome.Refused(
                "passkey",
                "The passkey proved nothing here. Try it again, or give name and password."
            );
        }

        await EnterAsync(account, SignInWay.Passkey, http);
        return Outcome.Accepted;
    }

    private async Task EnterAsync(Account account, SignInWay way, HttpContext http)
    {
        var address = http.Connection.RemoteIpAddress;
        limit.WasRight(address);
        await sessions.BeginAsync(account, way, http);
        LogSignedIn(logger, account.PersonId, address);
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
