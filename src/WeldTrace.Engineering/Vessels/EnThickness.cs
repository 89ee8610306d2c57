using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Required thickness in the manner of EN 13445-3 clauses 6 and 7 (formulas and limit e/De up to 0.16 read as quoted, not in
/// the standard itself). The standard itself and licensed practice decide.
/// </summary>
public static class EnThickness
{
    private const double LargestRatio = 0.16;
    private const string Source =
        "EN 13445-3 clause 7.4, read as quoted; check against the standard itself.";

    /// <summary>Design stress of clause 6: the smaller of Rp0.2/t / 1.5 and Rm/20 / 2.4.</summary>
    /// <param name="yieldAtTemperature">0.2 % proof strength at design temperature.</param>
    /// <param name="ultimateAtTwentyDegrees">Ultimate strength at 20 °C.</param>
    public static Pressure DesignStress(
        Pressure yieldAtTemperature,
        Pressure ultimateAtTwentyDegrees
    ) =>
        Pressure.FromPascals(
            Math.Min(yieldAtTemperature.Pascals / 1.5, ultimateAtTwentyDegrees.Pascals / 2.4)
        );

    /// <summary>Cylinder from the inside diameter: P·Di/(2·f·z − P).</summary>
    public static Computed<Length> Cylinder(DesignCase design) =>
        Solve(design, "cylinder", "e = P·Di/(2·f·z − P)", 2, isOutside: false);

    /// <summary>Cylinder from the outside diameter: P·De/(2·f·z + P). The radius of the case is taken as the outside one.</summary>
    public static Computed<Length> CylinderFromOutside(DesignCase designWithOutsideRadius) =>
        Solve(
            designWithOutsideRadius,
            "cylinder from the outside",
            "e = P·De/(2·f·z + P)",
            2,
            isOutside: true
        );

    /// <summary>Sphere: P·Di/(4·f·z − P).</summary>
    public static Computed<Length> Sphere(DesignCase design) =>
        Solve(design, "sphere", "e = P·Di/(4·f·z − P)", 4, isOutside: false);

    /// <summary>Highest pressure of a cylinder of a given wall: 2·f·z·e/Dm.</summary>
    /// <param name="weldedStress">Design stress times weld coefficient.</param>
    /// <param name="insideRadius">Inside radius, above zero.</param>
    /// <param name="thickness">Wall, above zero.</param>
    public static Pressure LargestPressure(
        Pressure weldedStress,
        Length insideRadius,
        Length thickness
    ) => weldedStress * (2 * (thickness / ((insideRadius * 2) + thickness)));

    private static Computed<Length> Solve(
        DesignCase design,
        string title,
        string formula,
        double stressFactor,
        bool isOutside
    )
    {
        ArgumentNullException.ThrowIfNull(design);
        var check = design.Check();
        if (!check.IsClean)
        {
            return check.Refused<Length>();
        }

        var diameter = design.InsideRadius * 2;
        var sign = isOutside ? 1 : -1;
        var divisor = (design.WeldedStress * stressFactor) + (design.Pressure * sign);
        var thickness = divisor.Pascals > 0 ? diameter * (design.Pressure / divisor) : diameter;
        var outside = isOutside ? diameter : diameter + (thickness * 2);
        return check
            .Require(
                thickness <= outside * LargestRatio,
                RefusalReason.OutsideValidity,
                "design pressure",
                $"The wall would be more than {Figures.Format(LargestRatio)} of the outside diameter.",
                "Lower the pressure, choose a stronger material, or size it as a thick wall."
            )
            .IsClean
            ? Computed.Of(
                thickness,
                design
                    .Begin($"Required thickness, {title}", $"{formula}; D = 2·R, f = S, z = E")
                    .Result("e", "required thickness", thickness.Millimetres, "mm")
                    .From(Source)
                    .Build()
            )
            : check.Refused<Length>();
    }
}
