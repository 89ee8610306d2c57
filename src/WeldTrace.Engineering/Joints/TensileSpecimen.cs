using WeldTrace.Engineering.Quantities;
using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.Joints;

/// <summary>Where a cross-weld specimen broke.</summary>
public enum FracturePlace
{
    /// <summary>Not recorded.</summary>
    Unknown,

    /// <summary>Parent material.</summary>
    Parent,

    /// <summary>Heat-affected zone.</summary>
    HeatAffectedZone,

    /// <summary>Thermo-mechanically affected zone.</summary>
    ThermoMechanicalZone,

    /// <summary>Nugget (stirred zone).</summary>
    Nugget,
}

/// <summary>A flat cross-weld tensile specimen.</summary>
/// <param name="Force">Highest force, above zero.</param>
/// <param name="Width">Smallest measured width, above zero.</param>
/// <param name="Thickness">Smallest measured thickness, above zero.</param>
/// <param name="Place">Where it broke.</param>
public sealed record TensileSpecimen(
    Force Force,
    Length Width,
    Length Thickness,
    FracturePlace Place = FracturePlace.Unknown
) : IWorked
{
    /// <summary>Tensile strength F/(w·t).</summary>
    public Pressure Strength =>
        Pressure.FromPascals(Force.Newtons / (Width.Metres * Thickness.Metres));

    /// <summary>How the strength follows; all three measured values lie above zero.</summary>
    public Working Working =>
        Working
            .Of("Tensile strength of a flat specimen", "R_m = F/(w·t)")
            .Input("F", "highest force", Force.Kilonewtons, "kN")
            .Input("w", "smallest width", Width.Millimetres, "mm")
            .Input("t", "smallest thickness", Thickness.Millimetres, "mm")
            .Result("R_m", "tensile strength", Strength.Megapascals, "MPa")
            .From("Definition; specimen of ISO 4136:2012 (read in a summary).")
            .Build();

    /// <summary>Tensile strength of a round specimen: 4F/(π·d²).</summary>
    /// <param name="force">Highest force.</param>
    /// <param name="diameter">Smallest measured diameter, above zero.</param>
    public static Pressure RoundStrength(Force force, Length diameter)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(diameter.Metres, nameof(diameter));
        return Pressure.FromPascals(4 * force.Newtons / (Math.PI * Math.Pow(diameter.Metres, 2)));
    }

    /// <summary>Relative standard uncertainty of the strength from those of force, width and thickness (GUM).</summary>
    public double RelativeUncertainty(Force force, Length width, Length thickness) =>
        Combine(force / Force, width / Width, thickness / Thickness);

    internal InputCheck Check(InputCheck check, int number) =>
        check
            .Positive($"force of specimen {number}", Force.Kilonewtons, "kN")
            .Positive($"width of specimen {number}", Width.Millimetres, "mm")
            .Positive($"thickness of specimen {number}", Thickness.Millimetres, "mm");
}
