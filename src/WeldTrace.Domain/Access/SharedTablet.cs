using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Access;

/// <summary>
/// A device that several people use one after the other, each under their own name, such as the tablet at a welding cell. It proves
/// itself by a word that its browser keeps; only the hash is known here. It signs nobody in: on it a person may use a short PIN.
/// </summary>
public sealed class SharedTablet : Record
{
    /// <summary>Longest name and reason.</summary>
    public const int LongestText = 60;

    private SharedTablet(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "shared-tablet";

    /// <inheritdoc/>
    public override string Label => Name;

    /// <summary>Where it is used, such as "Tablet at welding cell 2".</summary>
    public string Name { get; private set; } = "";

    /// <summary>SHA-256 of its word, hexadecimal.</summary>
    public string TokenSha256 { get; private set; } = "";

    /// <summary>Name of who registered it.</summary>
    public string RegisteredBy { get; private set; } = "";

    /// <summary>UTC instant at which it was registered.</summary>
    public DateTimeOffset RegisteredAt { get; private set; }

    /// <summary>UTC instant at which it was withdrawn; null while it was not.</summary>
    public DateTimeOffset? WithdrawnAt { get; private set; }

    /// <summary>Registers a device.</summary>
    /// <param name="name">Where it is used, 1 to 60 characters.</param>
    /// <param name="sha256">SHA-256 of its word, hexadecimal.</param>
    /// <param name="actor">A quality manager or an administrator.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<SharedTablet> Register(
        string name,
        string sha256,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.QualityManager, Role.Administrator)
            .Text(name, LongestText, "Say where the tablet is used", nameof(Name));
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var tablet = new SharedTablet(Guid.CreateVersion7(at))
        {
            Name = name.Trim(),
            TokenSha256 = sha256,
            RegisteredBy = actor.PrintedName,
            RegisteredAt = at,
        };
        tablet.Note(actor, at, "shared tablet registered");
        return tablet;
    }

    /// <summary>Withdraws it; its word is worth nothing from then on, nor any PIN set on it.</summary>
    /// <param name="reason">Why.</param>
    /// <param name="actor">A quality manager or an administrator.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Withdraw(string reason, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.QualityManager, Role.Administrator)
            .Text(reason, LongestText, "Say why it is withdrawn", "Reason")
            .That(WithdrawnAt is null, "state", $"{Name} is withdrawn already.");
        if (checks.AllHold)
        {
            WithdrawnAt = at;
            Note(actor, at, "shared tablet withdrawn", reason.Trim());
        }

        return checks.ToOutcome();
    }

    /// <summary>The tablet as one who acts, in no role: it erases a PIN that was given wrong too often.</summary>
    public Actor AsActor() => new(Id, $"{Name} (tablet)", []);
}
