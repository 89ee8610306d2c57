using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Required thickness in the manner of ASME VIII-1 UG-27 and appendix 1 (formulas and limits read as quoted, not in the code
/// itself). Outside their limits the thin forms are refused; the thick form takes over. Corrosion allowance and tolerances
/// come on top. The code itself and licensed practice decide.
/// </summary>
public static class AsmeThickness
{
    private const string Source =
        "ASME VIII-1 UG-27 and appendix 1, read as quoted; check against the code itself.";

    /// <summary>Highest pressure for the hoop form, 0.385·S·E.</summary>
    public static Pressure HoopPressureLimit(Pressure allowableStress, double jointFactor) =>
        allowableStress * (0.385 * jointFactor);

    /// <summary>Highest pressure for the axial form, 1.25·S·E.</summary>
    public static Pressure AxialPressureLimit(Pressure allowableStress, double jointFactor) =>
        allowableStress * (1.25 * jointFactor);

    /// <summary>Highest pressure for the sphere form, 0.665·S·E.</summary>
    public static Pressure SpherePressureLimit(Pressure allowableStress, double jointFactor) =>
        allowableStress * (0.665 * jointFactor);

    /// <summary>Cylinder, hoop stress (seams along the axis): P·R/(S·E − 0.6P).</summary>
    public static Computed<Length> CylinderHoop(DesignCase design) =>
        Solve(
            design,
            "cylinder, hoop stress",
            "t = P·R/(S·E − 0.6·P)",
            1,
            -0.6,
            HoopPressureLimit,
            0.5
        );

    /// <summary>Cylinder, axial stress (seams around it): P·R/(2·S·E + 0.4P).</summary>
    public static Computed<Length> CylinderAxial(DesignCase design) =>
        Solve(
            design,
            "cylinder, axial stress",
            "t = P·R/(2·S·E + 0.4·P)",
            2,
            0.4,
            AxialPressureLimit,
            0.5
        );

    /// <summary>Sphere: P·R/(2·S·E − 0.2P).</summary>
    public static Computed<Length> Sphere(DesignCase design) =>
        Solve(design, "sphere", "t = P·R/(2·S·E − 0.2·P)", 2, -0.2, SpherePressureLimit, 0.356);

    /// <summary>Cylinder from the outside radius, appendix 1-1: P·Ro/(S·E + 0.4P). The radius of the case is taken as the outside one.</summary>
    public static Computed<Length> CylinderFromOutsideRadius(DesignCase designWithOutsideRadius) =>
        Solve(
            designWithOutsideRadius,
            "cylinder from the outside radius",
            "t = P·Ro/(S·E + 0.4·P)",
            1,
            0.4,
            HoopPressureLimit,
            0.5
        );

    /// <summary>Cylinder of any wall, appendix 1-2: R·(exp(P/(S·E)) − 1).</summary>
    public static Computed<Length> CylinderThick(DesignCase design)
    {
        ArgumentNullException.ThrowIfNull(design);
        var check = design.Check();
        var ratio = check.IsClean ? design.Pressure / design.WeldedStress : 0;
        check.Require(
            ratio < 5,
            RefusalReason.OutsideValidity,
            "design pressure",
            "It is more than five times the welded allowable stress.",
            "Lower the pressure or choose a stronger material."
        );
        if (!check.IsClean)
        {
            return check.Refused<Length>();
        }

        var thickness = design.InsideRadius * (Math.Exp(ratio) - 1);
        return Done(design, "cylinder, thick wall", "t = R·(exp(P/(S·E)) − 1)", thickness);
    }

    private static Computed<Length> Solve(
        DesignCase design,
        string title,
        string formula,
        double stressFactor,
        double pressureFactor,
        Func<Pressure, double, Pressure> pressureLimit,
        double largestRatio
    )
    {
        ArgumentNullException.ThrowIfNull(design);
        var check = design.Check();
        if (!check.IsClean)
        {
            return check.Refused<Length>();
        }

        var limit = pressureLimit(design.AllowableStress, design.JointFactor);
        var divisor = (design.WeldedStress * stressFactor) + (design.Pressure * pressureFactor);
        var thickness =
            design.Pressure <= limit
                ? design.InsideRadius * (design.Pressure / divisor)
                : Length.Zero;
        check.Require(
            design.Pressure <= limit && thickness <= design.InsideRadius * largestRatio,
            RefusalReason.OutsideValidity,
            "design pressure",
            $"The form for a {title} holds up to {Figures.Format(limit.Megapascals, 4)} MPa and t/R up to {Figures.Format(largestRatio)}.",
            "Use the thick-wall form."
        );
        return check.IsClean ? Done(design, title, formula, thickness) : check.Refused<Length>();
    }

    private static Computed<Length> Done(
        DesignCase design,
        string title,
        string formula,
        Length thickness
    ) =>
        Computed.Of(
            thickness,
            design
                .Begin($"Required thickness, {title}", formula)
                .Result("t", "required thickness", thickness.Millimetres, "mm")
                .From(Source)
                .Build()
        );
}
