using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Elastic growth of the bore of a closed cylinder: <c>ΔV/V = p/(E·(k² − 1))·(3·(1 − 2ν) + 2·k²·(1 + ν))</c>, k = ro/ri. From Lamé and Hooke.
/// </summary>
public sealed record ElasticExpansion : IWorked
{
    private ElasticExpansion(double strain, Volume volume, Working working) =>
        (Strain, Expansion, Working) = (strain, volume * strain, working);

    /// <summary>Relative growth ΔV/V.</summary>
    public double Strain { get; }

    /// <summary>Growth of the given volume.</summary>
    public Volume Expansion { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the growth.</summary>
    /// <param name="pressure">Inner gauge pressure, zero or more.</param>
    /// <param name="modulus">Young's modulus, above zero; about 69 GPa for aluminium.</param>
    /// <param name="poissonRatio">Poisson's ratio, 0 to 0.5; about 0.33 for aluminium.</param>
    /// <param name="innerRadius">Inner radius, above zero.</param>
    /// <param name="outerRadius">Outer radius, above the inner one.</param>
    /// <param name="volume">Inner volume, above zero.</param>
    public static Computed<ElasticExpansion> Compute(
        Pressure pressure,
        Pressure modulus,
        double poissonRatio,
        Length innerRadius,
        Length outerRadius,
        Volume volume
    )
    {
        var check = new InputCheck()
            .NotNegative("pressure", pressure.Megapascals, "MPa")
            .Positive("Young's modulus", modulus.Megapascals, "MPa")
            .Between("Poisson's ratio", poissonRatio, 0, 0.5)
            .Positive("inner radius", innerRadius.Millimetres, "mm")
            .Positive("volume", volume.Litres, "l")
            .Require(
                outerRadius > innerRadius,
                RefusalReason.OutOfRange,
                "outer radius",
                "It is not larger than the inner radius.",
                "Enter the outer radius, inner radius plus wall."
            );
        return check.Compute(() =>
            Of(pressure, modulus, poissonRatio, innerRadius, outerRadius, volume)
        );
    }

    private static ElasticExpansion Of(
        Pressure pressure,
        Pressure modulus,
        double poissonRatio,
        Length innerRadius,
        Length outerRadius,
        Volume volume
    )
    {
        var k2 = Math.Pow(outerRadius / innerRadius, 2);
        var bracket = (3 * (1 - (2 * poissonRatio))) + (2 * k2 * (1 + poissonRatio));
        var strain = pressure / modulus / (k2 - 1) * bracket;
        var working = Working
            .Of(
                "Elastic growth of a cylinder",
                "ΔV/V = p/(E·(k² − 1))·(3·(1 − 2ν) + 2·k²·(1 + ν)); k = ro/ri"
            )
            .Input("p", "inner gauge pressure", pressure.Megapascals, "MPa")
            .Input("E", "Young's modulus", modulus.Megapascals, "MPa")
            .Input("ν", "Poisson's ratio", poissonRatio)
            .Input("ri", "inner radius", innerRadius.Millimetres, "mm")
            .Input("ro", "outer radius", outerRadius.Millimetres, "mm")
            .Input("V", "volume", volume.Litres, "l")
            .Result("ΔV/V", "relative growth", strain)
            .Result("ΔV", "growth", volume.CubicCentimetres * strain, "cm³")
            .From("Lamé and Hooke, closed ends; ends themselves neglected.")
            .Build();
        return new(strain, volume, working);
    }
}
