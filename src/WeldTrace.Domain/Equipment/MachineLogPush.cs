using WeldTrace.Domain.Access;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Equipment;

/// <summary>
/// A word by which a machine proves that it may push its process logs, and nothing else. Only its hash is known here.
/// </summary>
/// <param name="Label">What it is for, such as the name of the machine's computer.</param>
/// <param name="TokenSha256">SHA-256 of the word, hexadecimal.</param>
/// <param name="GivenBy">Name of who gave it.</param>
/// <param name="GivenAt">UTC instant.</param>
/// <param name="WithdrawnAt">UTC instant from which it is worth nothing; null while it holds.</param>
public sealed record LogToken(
    string Label,
    string TokenSha256,
    string GivenBy,
    DateTimeOffset GivenAt,
    DateTimeOffset? WithdrawnAt = null
)
{
    /// <summary>UTC instant from which it is worth nothing; null in tokens given before they had an end.</summary>
    public DateTimeOffset? ExpiresAt { get; init; }

    /// <summary>Whether it is worth anything at an instant.</summary>
    /// <param name="at">UTC instant.</param>
    public bool HoldsAt(DateTimeOffset at) => WithdrawnAt is null && !(at >= ExpiresAt);
}

// Process logs that the machine sends by itself.
public sealed partial class Machine
{
    /// <summary>Its tokens as stored, withdrawn ones included; null before the first.</summary>
    public IReadOnlyList<LogToken>? LogTokens { get; private set; }

    /// <summary>How often the meaning of its log columns was set; null when that was before it was counted.</summary>
    public int? LogColumnsRevision { get; private set; }

    /// <summary>Whether a word of this hash lets the machine push its logs.</summary>
    /// <param name="sha256">SHA-256 of the word, hexadecimal.</param>
    /// <param name="at">UTC instant.</param>
    public bool TakesLogsFor(string sha256, DateTimeOffset at) =>
        LogTokens?.Any(t => t.HoldsAt(at) && t.TokenSha256 == sha256) is true;

    /// <summary>Gives the machine a token to push its logs with.</summary>
    /// <param name="label">What it is for; unique among those that hold.</param>
    /// <param name="days">How long it holds, 1 to 730 days.</param>
    /// <param name="sha256">SHA-256 of the word, hexadecimal.</param>
    /// <param name="actor">An administrator.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome GiveLogToken(
        string label,
        int days,
        string sha256,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Administrator)
            .Text(label, LongestText, "Say what the token is for", nameof(LogToken.Label))
            .That(
                LogTokens?.Any(t => t.HoldsAt(at) && t.Label == label?.Trim()) is not true,
                "label",
                $"A token '{label?.Trim()}' of {Name} holds already; withdraw it first, or choose another name.",
                nameof(LogToken.Label)
            )
            .That(
                days is >= 1 and <= SystemToken.MostDays,
                "days",
                SystemToken.DaysSentence,
                "Days"
            );
        return Do(
            checks,
            () =>
                LogTokens = [
                    .. LogTokens ?? [],
                    new(label!.Trim(), sha256, actor.PrintedName, at)
                    {
                        ExpiresAt = at.AddDays(days),
                    },
                ],
            actor,
            at,
            "token for pushing logs given",
            label?.Trim()
        );
    }

    /// <summary>Withdraws a token; it is worth nothing from then on.</summary>
    /// <param name="label">Label of a token that holds.</param>
    /// <param name="actor">An administrator.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome WithdrawLogToken(string label, Actor actor, DateTimeOffset at)
    {
        var holds = LogTokens?.Any(t => t.WithdrawnAt is null && t.Label == label) is true;
        var checks = new Checks()
            .Role(actor, Role.Administrator)
            .That(
                holds,
                "label",
                $"{Name} has no token '{label}' that holds.",
                nameof(LogToken.Label)
            );
        return Do(
            checks,
            () =>
                LogTokens = [
                    .. LogTokens!.Select(t =>
                        t.WithdrawnAt is null && t.Label == label ? t with { WithdrawnAt = at } : t
                    ),
                ],
            actor,
            at,
            "token for pushing logs withdrawn",
            label
        );
    }
}
