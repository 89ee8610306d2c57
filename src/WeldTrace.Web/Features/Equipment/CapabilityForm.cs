using WeldTrace.Domain.Equipment;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Web.Components.Forms;

namespace WeldTrace.Web.Features.Equipment;

/// <summary>What was typed for the plate of a machine, and for the largest values that it can hold.</summary>
public class CapabilityForm
{
    public string? Maker { get; set; }

    public string? Model { get; set; }

    public string? SerialNumber { get; set; }

    public string? SpindleSpeed { get; set; }

    public string? TravelSpeed { get; set; }

    public string? Force { get; set; }

    public string? Torque { get; set; }

    public MachineNameplate Nameplate => new(Maker, Model, SerialNumber);

    public MachineCapability Read(Entries entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        return new(
            Read(entries, SpindleSpeed, "rev/min", "Largest spindle speed", nameof(SpindleSpeed))
                is { } spindle
                ? RotationSpeed.FromRevolutionsPerMinute(spindle)
                : null,
            Read(entries, TravelSpeed, "mm/min", "Largest travel speed", nameof(TravelSpeed))
                is { } travel
                ? Speed.FromMillimetresPerMinute(travel)
                : null,
            Read(entries, Force, "kN", "Largest axial force", nameof(Force)) is { } force
                ? Engineering.Quantities.Force.FromKilonewtons(force)
                : null,
            Read(entries, Torque, "N·m", "Largest torque", nameof(Torque)) is { } torque
                ? Engineering.Quantities.Torque.FromNewtonMetres(torque)
                : null
        );
    }

    private static double? Read(
        Entries entries,
        string? text,
        string unit,
        string what,
        string field
    ) => entries.OptionalNumber(text, unit, what, field)?.InUnit();
}
