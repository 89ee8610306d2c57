using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Preparation;

/// <summary>That a joint was cleaned; a later record takes its place (ISO 25239-5:2020 4.7.2).</summary>
public sealed class JointCleaning : Record
{
    /// <summary>Longest method.</summary>
    public const int LongestText = 200;

    private JointCleaning(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "joint-cleaning";

    /// <inheritdoc/>
    public override string Label => $"{VesselSerial} {JointCode}, cleaned";

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => [VesselId];

    /// <inheritdoc/>
    public override bool IsSealed => true;

    /// <summary>Vessel.</summary>
    public Guid VesselId { get; private set; }

    /// <summary>Serial of the vessel.</summary>
    public string VesselSerial { get; private set; } = "";

    /// <summary>Joint.</summary>
    public string JointCode { get; private set; } = "";

    /// <summary>UTC instant at which the cleaning ended.</summary>
    public DateTimeOffset CleanedAt { get; private set; }

    /// <summary>How it was cleaned.</summary>
    public string Method { get; private set; } = "";

    /// <summary>Who cleaned.</summary>
    public Guid CleanedById { get; private set; }

    /// <summary>Printed name.</summary>
    public string CleanedByName { get; private set; } = "";

    /// <summary>Records a cleaning.</summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="jointCode">Joint of its design.</param>
    /// <param name="method">How; 1 to 200 characters.</param>
    /// <param name="fixtureIsClean">Whether clamps and fixture are clean too.</param>
    /// <param name="cleanedAt">UTC instant at which it ended; not in the future.</param>
    /// <param name="actor">Who cleaned.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<JointCleaning> Record(
        Vessel vessel,
        string jointCode,
        string method,
        bool fixtureIsClean,
        DateTimeOffset cleanedAt,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, Role.Operator, Role.Inspector, Role.Engineer)
            .That(
                !vessel.IsFinal,
                "state",
                $"{vessel.Serial} is {Vessel.StateWord(vessel.State)}; nothing more is prepared on it."
            )
            .Text(method, LongestText, "Say how the joint was cleaned", nameof(Method))
            .That(
                fixtureIsClean,
                "fixture",
                "Clean the clamps and the fixture too, then say so.",
                "FixtureIsClean",
                "ISO 25239-5:2020 4.4.3"
            )
            .That(
                cleanedAt <= at,
                "future",
                "The cleaning can't have ended in the future; check the time.",
                nameof(CleanedAt)
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var cleaning = new JointCleaning(Guid.CreateVersion7(at))
        {
            VesselId = vessel.Id,
            VesselSerial = vessel.Serial,
            JointCode = jointCode,
            CleanedAt = cleanedAt,
            Method = method.Trim(),
            CleanedById = actor.PersonId,
            CleanedByName = actor.PrintedName,
        };
        cleaning.Note(actor, at, "joint cleaned");
        return cleaning;
    }
}
