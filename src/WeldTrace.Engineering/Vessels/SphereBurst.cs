using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Burst pressure of a sphere: mean diameter <c>4·su·t/Dm</c>, thin power law <c>2·su·(2/3)ⁿ·t/rm</c>; each times the weld factor. Sound,
/// uniform wall. Usual formulas.
/// </summary>
public sealed record SphereBurst : IWorked
{
    private SphereBurst(BurstMaterial material, Length insideDiameter, Length thickness)
    {
        var ratio = thickness / (insideDiameter + thickness);
        MeanDiameter = material.Ultimate * (material.WeldFactor * 4 * ratio);
        ThinPowerLaw = MeanDiameter * Math.Pow(2.0 / 3, material.HardeningExponent);
        Working = Working
            .Of(
                "Burst pressure of a sphere",
                "mean diameter 4·su·t/Dm; power law 2·su·(2/3)ⁿ·t/rm; each × weld factor"
            )
            .Input("su", "ultimate strength", material.Ultimate.Megapascals, "MPa")
            .Input("n", "hardening exponent", material.HardeningExponent)
            .Input("", "weld factor", material.WeldFactor)
            .Input("Di", "inside diameter", insideDiameter.Millimetres, "mm")
            .Input("t", "wall", thickness.Millimetres, "mm")
            .Result("", "mean diameter", MeanDiameter.Megapascals, "MPa")
            .Result("", "thin power law", ThinPowerLaw.Megapascals, "MPa")
            .From("Usual formulas. A burst test decides.")
            .Validity(
                Validity.When(
                    thickness <= insideDiameter * (ThinWallStress.LargestRatio / 2),
                    $"t/ri is at most {Figures.Format(ThinWallStress.LargestRatio)}.",
                    "the wall is too thick for these forms."
                )
            )
            .Build();
    }

    /// <summary>Mean diameter formula; no hardening.</summary>
    public Pressure MeanDiameter { get; }

    /// <summary>Thin wall, power law.</summary>
    public Pressure ThinPowerLaw { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Predicts the burst pressure.</summary>
    /// <param name="material">Strength of the wall.</param>
    /// <param name="insideDiameter">Inside diameter, above zero.</param>
    /// <param name="thickness">Wall, above zero.</param>
    public static Computed<SphereBurst> Compute(
        BurstMaterial material,
        Length insideDiameter,
        Length thickness
    )
    {
        ArgumentNullException.ThrowIfNull(material);
        var check = material
            .Check(new InputCheck())
            .Positive("inside diameter", insideDiameter.Millimetres, "mm")
            .Positive("wall", thickness.Millimetres, "mm");
        return check.Compute(() => new SphereBurst(material, insideDiameter, thickness));
    }
}
