using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Access;

/// <summary>What a token lets a system do; a system that does two things holds two tokens.</summary>
public enum TokenScope
{
    /// <summary>Send the readings of a pressure test that is under way, or of a leak test that waits.</summary>
    PushBenchReadings,

    /// <summary>Read the state and the history of vessels.</summary>
    ReadHistories,
}

/// <summary>
/// A word by which another system proves itself, such as the computer of the test bench. Only its hash is known here. It never signs:
/// what it sends is signed by a person.
/// </summary>
public sealed class SystemToken : Record
{
    /// <summary>Longest name and reason.</summary>
    public const int LongestText = 60;

    /// <summary>A token holds at most so many days, so that one that is forgotten ends by itself.</summary>
    public const int MostDays = 730;

    private SystemToken(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "system-token";

    /// <inheritdoc/>
    public override string Label => $"token of {SystemName}";

    /// <summary>The system that holds it.</summary>
    public string SystemName { get; private set; } = "";

    /// <summary>What it may do.</summary>
    public TokenScope Scope { get; private set; }

    /// <summary>SHA-256 of the word, hexadecimal.</summary>
    public string TokenSha256 { get; private set; } = "";

    /// <summary>Name of who gave it.</summary>
    public string GivenBy { get; private set; } = "";

    /// <summary>UTC instant at which it was given.</summary>
    public DateTimeOffset GivenAt { get; private set; }

    /// <summary>UTC instant from which it is worth nothing.</summary>
    public DateTimeOffset ExpiresAt { get; private set; }

    /// <summary>UTC instant at which it was withdrawn; null while it was not.</summary>
    public DateTimeOffset? WithdrawnAt { get; private set; }

    /// <summary>Gives a system a token.</summary>
    /// <param name="system">Name of the system, 1 to 60 characters.</param>
    /// <param name="scope">What it may do.</param>
    /// <param name="days">How long it holds, 1 to 730 days.</param>
    /// <param name="sha256">SHA-256 of the word, hexadecimal.</param>
    /// <param name="actor">An administrator.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<SystemToken> Give(
        string system,
        TokenScope scope,
        int days,
        string sha256,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Administrator)
            .Text(system, LongestText, "Name the system that gets the token", nameof(SystemName))
            .That(Enum.IsDefined(scope), "scope", "Choose what the token is for.", nameof(Scope))
            .That(days is >= 1 and <= MostDays, "days", DaysSentence, "Days");
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var token = new SystemToken(Guid.CreateVersion7(at))
        {
            SystemName = system.Trim(),
            Scope = scope,
            TokenSha256 = sha256,
            GivenBy = actor.PrintedName,
            GivenAt = at,
            ExpiresAt = at.AddDays(days),
        };
        token.Note(actor, at, "token given", $"{token.SystemName}: {Word(scope)}");
        return token;
    }

    /// <summary>Withdraws it; it is worth nothing from then on.</summary>
    /// <param name="reason">Why.</param>
    /// <param name="actor">An administrator.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Withdraw(string reason, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Administrator)
            .Text(reason, LongestText, "Say why it is withdrawn", "Reason")
            .That(WithdrawnAt is null, "state", $"The {Label} is withdrawn already.");
        if (checks.AllHold)
        {
            WithdrawnAt = at;
            Note(actor, at, "token withdrawn", reason.Trim());
        }

        return checks.ToOutcome();
    }

    /// <summary>Whether it is worth anything at an instant.</summary>
    /// <param name="at">UTC instant.</param>
    public bool HoldsAt(DateTimeOffset at) => WithdrawnAt is null && at < ExpiresAt;

    /// <summary>
    /// The system as one who acts. At the bench it records readings as an inspector would; what reads only, acts in no role.
    /// </summary>
    public Actor AsActor() =>
        new(
            Id,
            $"{SystemName} (system)",
            Scope == TokenScope.PushBenchReadings ? [Role.Inspector] : []
        );

    /// <summary>The words for a scope.</summary>
    /// <param name="scope">Scope.</param>
    public static string Word(TokenScope scope) =>
        scope switch
        {
            TokenScope.PushBenchReadings => "push bench readings",
            TokenScope.ReadHistories => "read histories of vessels",
            _ => throw new ArgumentOutOfRangeException(nameof(scope), scope, "Unknown scope."),
        };

    /// <summary>What is said of a time that no token holds.</summary>
    internal static string DaysSentence =>
        $"A token holds 1 to {MostDays} days; give a whole number.";
}
