using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;

namespace WeldTrace.Domain.Testing;

/// <summary>Where a burst began, relative to the welds.</summary>
public enum BurstZone
{
    /// <summary>Parent material.</summary>
    Parent,

    /// <summary>Heat-affected zone, advancing side.</summary>
    HeatAffectedAdvancing,

    /// <summary>Heat-affected zone, retreating side.</summary>
    HeatAffectedRetreating,

    /// <summary>Thermo-mechanically affected zone.</summary>
    ThermoMechanical,

    /// <summary>Stirred zone.</summary>
    Stirred,

    /// <summary>Root of the weld.</summary>
    Root,

    /// <summary>Boss, fitting or seal.</summary>
    Fitting,
}

/// <summary>How a destructive sample burst.</summary>
/// <param name="Pressure">Highest gauge pressure, in bar.</param>
/// <param name="RatePerMinute">Rise of pressure in the minute before, in bar.</param>
/// <param name="Origin">Zone in which it began.</param>
/// <param name="JointCode">Joint nearest to the origin; null when it is far from all.</param>
/// <param name="Angle">Angle of the origin from the joint's reference mark, in degrees; null when it was not measured.</param>
/// <param name="Path">How the crack ran, relative to the zones of the weld.</param>
/// <param name="Photographs">Photographs of origin, path and fragments; one at least.</param>
public sealed record BurstReading(
    Measured Pressure,
    Measured RatePerMinute,
    BurstZone Origin,
    string? JointCode,
    Measured? Angle,
    string Path,
    IReadOnlyList<Photograph> Photographs
)
{
    /// <summary>The words for a zone.</summary>
    public static string ZoneWord(BurstZone zone) =>
        zone switch
        {
            BurstZone.Parent => "parent material",
            BurstZone.HeatAffectedAdvancing => "heat-affected zone, advancing side",
            BurstZone.HeatAffectedRetreating => "heat-affected zone, retreating side",
            BurstZone.ThermoMechanical => "thermo-mechanically affected zone",
            BurstZone.Stirred => "stirred zone",
            BurstZone.Root => "root of the weld",
            BurstZone.Fitting => "boss, fitting or seal",
            _ => throw new ArgumentOutOfRangeException(nameof(zone), zone, "Unknown zone."),
        };

    internal void Check(Checks checks, VesselDesigns.DesignContent design)
    {
        Reading.Between(
            checks,
            Pressure,
            0.1,
            design.Pressures.Meop.Bar * 100,
            "Burst pressure",
            nameof(Pressure)
        );
        Reading.Between(
            checks,
            RatePerMinute,
            0,
            10000,
            "Rise before the burst",
            nameof(RatePerMinute)
        );
        checks
            .Text(
                Path,
                TestRecord.LongestText,
                "Say how the crack ran, relative to the zones of the weld",
                nameof(Path)
            )
            .That(
                JointCode is null || design.Joint(JointCode) is not null,
                "joint",
                $"The design has no joint '{JointCode}'.",
                nameof(JointCode)
            )
            .That(
                Photographs.Count > 0,
                "photograph",
                "Bring at least one photograph of the origin.",
                nameof(Photographs)
            );
        if (Angle is not null)
        {
            Reading.Between(checks, Angle, 0, 360, "Angle of the origin", nameof(Angle));
        }
    }
}
