using WeldTrace.Domain.People;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.Domain.Equipment;

/// <summary>What one column of a machine's process log means.</summary>
/// <param name="Column">Name of the column in the file.</param>
/// <param name="Channel">Quantity, as the log reader names it.</param>
/// <param name="Unit">Unit of the values in the file.</param>
/// <param name="Factor">Number to multiply the values with, for instance -1 to turn a sign.</param>
public sealed record LogColumn(string Column, string Channel, string Unit, double Factor)
{
    /// <summary>How the channel is smoothed before it is judged; null when it is judged as logged.</summary>
    public SampleFilter? Filter { get; init; }
}

/// <summary>A friction-stir welding machine.</summary>
public sealed partial class Machine : Record
{
    /// <summary>Longest name or word.</summary>
    public const int LongestText = 80;

    /// <summary>Longest account of what happened or was done.</summary>
    public const int LongestAccount = 600;

    private Machine(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "machine";

    /// <inheritdoc/>
    public override string Label => Name;

    /// <summary>Name in the shop; unique.</summary>
    public string Name { get; private set; } = "";

    /// <summary>Serial number or description.</summary>
    public string Description { get; private set; } = "";

    /// <summary>Control mode: position, force or temperature, in the trade's words.</summary>
    public string ControlMode { get; private set; } = "";

    /// <summary>Meaning of the columns of its process logs, remembered from the last accepted log; empty at first.</summary>
    public IReadOnlyList<LogColumn> LogColumns { get; private set; } = [];

    /// <summary>Maker, model and serial number; null when nobody has stated any.</summary>
    public MachineNameplate? Nameplate { get; private set; }

    /// <summary>Largest values it can hold; null when nobody has stated any.</summary>
    public MachineCapability? Capability { get; private set; }

    /// <summary>Its log as stored; null before the first entry.</summary>
    public IReadOnlyList<MachineEvent>? Events { get; private set; }

    /// <summary>Its maintenance plan as stored; null before the first item.</summary>
    public IReadOnlyList<MaintenanceItem>? Plan { get; private set; }

    /// <summary>Services done, as stored, oldest first; null before the first.</summary>
    public IReadOnlyList<MaintenanceService>? Services { get; private set; }

    /// <summary>How it stands by its log, maintenance left aside.</summary>
    public MachineStanding Standing => MachineStanding.Of(Events ?? []);

    /// <summary>The items of the maintenance plan with their due days, the most urgent first.</summary>
    public IReadOnlyList<MaintenanceDue> Maintenance =>
        [
            .. (Plan ?? [])
                .Select(i => new MaintenanceDue(i, Services?.LastOrDefault(s => s.Item == i.Name)))
                .OrderBy(d => d.WeldsUntil),
        ];

    /// <summary>Enters a machine.</summary>
    public static Outcome<Machine> Enter(
        string name,
        string description,
        string controlMode,
        Actor actor,
        DateTimeOffset at
    )
    {
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .Text(name, LongestText, "Give the machine's name", nameof(Name))
            .Text(
                description,
                LongestText,
                "Give a serial number or description",
                nameof(Description)
            )
            .Text(controlMode, LongestText, "Give the control mode", nameof(ControlMode));
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var machine = new Machine(Guid.CreateVersion7(at))
        {
            Name = name.Trim(),
            Description = description.Trim(),
            ControlMode = controlMode.Trim(),
        };
        machine.Note(actor, at, "machine entered");
        return machine;
    }

    /// <summary>States what the machine's plate says and the largest values that it can hold.</summary>
    /// <param name="capability">Largest values.</param>
    /// <param name="actor">Engineer or quality manager.</param>
    /// <param name="at">UTC instant.</param>
    /// <param name="plate">Maker, model and serial number; null leaves them as they are.</param>
    public Outcome Describe(
        MachineCapability capability,
        Actor actor,
        DateTimeOffset at,
        MachineNameplate? plate = null
    )
    {
        ArgumentNullException.ThrowIfNull(capability);
        double?[] values =
        [
            capability.SpindleSpeed?.SiValue,
            capability.TravelSpeed?.SiValue,
            capability.Force?.SiValue,
            capability.Torque?.SiValue,
        ];
        var checks = new Checks()
            .Role(actor, Role.Engineer, Role.QualityManager)
            .That(
                values.All(v => v is null or > 0),
                "capability",
                "Each largest value lies above zero; leave empty what isn't known.",
                nameof(Capability)
            );
        var stated = plate is null ? Nameplate : Plate(checks, plate);
        return Do(
            checks,
            () => (Capability, Nameplate) = (capability, stated),
            actor,
            at,
            "plate and capability stated"
        );
    }

    /// <summary>How it stands on a day: a service missed beyond its grace locks it too.</summary>
    /// <param name="today">Day at the site.</param>
    public MachineState StateOn(DateOnly today) =>
        Maintenance.Any(d => d.On(today) == MaintenanceStanding.Locking)
            ? MachineState.Locked
            : Standing.State;

    /// <summary>Remembers what the columns of its logs mean; nothing is recorded when nothing changed.</summary>
    public void RememberLogColumns(IReadOnlyList<LogColumn> columns, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(columns);
        if (!columns.SequenceEqual(LogColumns))
        {
            LogColumns = [.. columns];
            LogColumnsRevision = (LogColumnsRevision ?? 0) + 1;
            Note(actor, at, "process log columns mapped");
        }
    }

    private static MachineNameplate? Plate(Checks checks, MachineNameplate plate)
    {
        var stated = new MachineNameplate(
            Word(plate.Maker, "maker", nameof(plate.Maker)),
            Word(plate.Model, "model", nameof(plate.Model)),
            Word(plate.SerialNumber, "serial number", nameof(plate.SerialNumber))
        );
        return stated.IsEmpty ? null : stated;

        string? Word(string? text, string what, string field)
        {
            if (string.IsNullOrWhiteSpace(text))
            {
                return null;
            }

            checks.Text(text, LongestText, $"Give the {what} of the machine or nothing", field);
            return text.Trim();
        }
    }

    private Outcome Do(
        Checks checks,
        Action change,
        Actor actor,
        DateTimeOffset at,
        string act,
        string? reason = null
    )
    {
        if (checks.AllHold)
        {
            change();
            Note(actor, at, act, reason);
        }

        return checks.ToOutcome();
    }
}
