using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Material;

/// <summary>A component with a serial of its own, cut from a lot; later built into one vessel.</summary>
public sealed class CutComponent : Record
{
    /// <summary>Longest serial, kind or name; fits a vessel's own list of components.</summary>
    public const int LongestText = Vessel.LongestText;

    private CutComponent(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "component";

    /// <inheritdoc/>
    public override string Label => Serial;

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => VesselId is { } vessel ? [vessel] : [];

    /// <summary>Serial mark on the part; unique.</summary>
    public string Serial { get; private set; } = "";

    /// <summary>What it is, for instance <c>shell</c> or <c>end</c>.</summary>
    public string PartKind { get; private set; } = "";

    /// <summary>Lot it was cut from.</summary>
    public Guid LotId { get; private set; }

    /// <summary>Number of that lot.</summary>
    public string LotNumber { get; private set; } = "";

    /// <summary>Cast number of that lot.</summary>
    public string CastNumber { get; private set; } = "";

    /// <summary>Who made it; may be an outside shop.</summary>
    public string MadeBy { get; private set; } = "";

    /// <summary>Day on which it was made.</summary>
    public DateOnly MadeOn { get; private set; }

    /// <summary>Vessel it is built into; null while it is free.</summary>
    public Guid? VesselId { get; private set; }

    /// <summary>Serial of that vessel.</summary>
    public string? VesselSerial { get; private set; }

    /// <summary>Why it is never used; null while it may be.</summary>
    public string? ScrappedBecause { get; private set; }

    /// <summary>Enters a component.</summary>
    /// <param name="serial">Serial mark; 1 to 40 characters.</param>
    /// <param name="partKind">What it is; 1 to 40 characters.</param>
    /// <param name="lot">Lot it was cut from.</param>
    /// <param name="madeBy">Who made it; 1 to 40 characters.</param>
    /// <param name="madeOn">Day; not in the future.</param>
    /// <param name="today">Day at the site.</param>
    /// <param name="actor">Who enters it.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<CutComponent> Enter(
        string serial,
        string partKind,
        MaterialLot lot,
        string madeBy,
        DateOnly madeOn,
        DateOnly today,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(lot);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.Inspector, Role.QualityManager)
            .Text(serial, LongestText, "Give the serial mark of each component", nameof(Serial))
            .Text(partKind, LongestText, "Say what the component is", nameof(PartKind))
            .Text(madeBy, LongestText, "Say who made it", nameof(MadeBy))
            .That(
                madeOn <= today,
                "future",
                "The day on which it was made lies in the future; check it.",
                nameof(MadeOn)
            );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var component = new CutComponent(Guid.CreateVersion7(at))
        {
            Serial = serial.Trim(),
            PartKind = partKind.Trim(),
            LotId = lot.Id,
            LotNumber = lot.Number,
            CastNumber = lot.CastNumber,
            MadeBy = madeBy.Trim(),
            MadeOn = madeOn,
        };
        component.Note(actor, at, "component entered");
        return component;
    }

    /// <summary>Why it can't be built into a vessel; null when it can.</summary>
    public string? AgainstUse =>
        this switch
        {
            { ScrappedBecause: { } why } => $"{Serial} was scrapped: {why}",
            { VesselSerial: { } vessel } =>
                $"{Serial} is built into {vessel}; a component is built in once.",
            _ => null,
        };

    /// <summary>The component as a vessel lists it.</summary>
    /// <param name="name">What it is on the vessel; empty for what it was entered as.</param>
    public Component OnVessel(string name) =>
        new(
            string.IsNullOrWhiteSpace(name) ? PartKind : name.Trim(),
            Serial,
            LotId,
            LotNumber,
            CastNumber,
            Id
        );

    /// <summary>Builds it into a vessel.</summary>
    public Outcome BuildInto(Vessel vessel, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(vessel);
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .That(AgainstUse is null, "component", AgainstUse ?? "", nameof(Serial));
        if (checks.AllHold)
        {
            (VesselId, VesselSerial) = (vessel.Id, vessel.Serial);
            Note(actor, at, "built into a vessel", vessel.Serial);
        }

        return checks.ToOutcome();
    }

    /// <summary>Takes a free component out of use for good.</summary>
    public Outcome Scrap(string reason, Actor actor, DateTimeOffset at)
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.Operator, Role.Inspector, Role.QualityManager)
            .That(AgainstUse is null, "component", AgainstUse ?? "")
            .Text(reason, MaterialLot.LongestText, "Give the reason", "Reason");
        if (checks.AllHold)
        {
            ScrappedBecause = reason.Trim();
            Note(actor, at, "component scrapped", reason.Trim());
        }

        return checks.ToOutcome();
    }
}
