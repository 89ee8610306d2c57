using System.Net;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence.Accounts;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Features.SignIn;

/// <summary>Who proved to be who, and how.</summary>
/// <param name="Outcome">Whether it was proved.</param>
/// <param name="Account">Whose account; null when it was not.</param>
/// <param name="Way">How.</param>
public sealed record Proof(Outcome Outcome, Account? Account, SignInWay Way);

/// <summary>The one door of people into the site: holds up addresses, begins the session, and tells of it in the log.</summary>
public sealed partial class Entrance(SignInLimit limit, Sessions sessions, ILogger<Entrance> logger)
{
    /// <summary>Lets in whoever proves who they are.</summary>
    /// <param name="http">Request.</param>
    /// <param name="field">Field of the secret.</param>
    /// <param name="prove">Proves it; not asked while the address is held up.</param>
    public async Task<Outcome> EnterAsync(HttpContext http, string field, Func<Task<Proof>> prove)
    {
        ArgumentNullException.ThrowIfNull(http);
        ArgumentNullException.ThrowIfNull(prove);
        var address = http.Connection.RemoteIpAddress;
        if (!limit.TryEnter(address))
        {
            LogHeldUp(logger, address);
            return TooMany(field);
        }

        var proof = await prove();
        if (!proof.Outcome.IsAccepted)
        {
            LogRefused(logger, address);
            return proof.Outcome;
        }

        limit.WasRight(address);
        await sessions.BeginAsync(proof.Account!, proof.Way, http);
        LogSignedIn(logger, proof.Account!.PersonId, address);
        return proof.Outcome;
    }

    private static Outcome TooMany(string field) =>
        Outcome.Refused(
            "address",
            FormattableString.Invariant(
                $"Too many wrong sign-ins came from this network address. Wait {SignInLimit.Window.TotalMinutes:0} minutes, then try again; whoever is signed in already can go on."
            ),
            field
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
