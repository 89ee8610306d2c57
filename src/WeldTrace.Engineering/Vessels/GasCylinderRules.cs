using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Rules for seamless aluminium gas cylinders, for comparison: 49 CFR 178.46 (DOT 3AL; wall stress read, limits from memory) and
/// ISO 7866 (from memory). Welded vessels are not covered by either.
/// </summary>
public static class GasCylinderRules
{
    /// <summary>Wall stress of 49 CFR 178.46(d): P·(1.3·D² + 0.4·d²)/(D² − d²).</summary>
    /// <param name="testPressure">Test pressure, gauge, above zero.</param>
    /// <param name="outside">Outside diameter D, above the inside one.</param>
    /// <param name="inside">Inside diameter d, above zero.</param>
    public static Computed<Pressure> WallStress3Al(
        Pressure testPressure,
        Length outside,
        Length inside
    )
    {
        var check = new InputCheck()
            .Positive("test pressure", testPressure.Megapascals, "MPa")
            .Positive("inside diameter", inside.Millimetres, "mm")
            .Require(
                outside > inside,
                RefusalReason.OutOfRange,
                "outside diameter",
                "It is not larger than the inside diameter.",
                "Enter the outside diameter, inside diameter plus twice the wall."
            );
        return check.Compute(() => Stress3Al(testPressure, outside, inside));
    }

    private static (Pressure Value, Working Working) Stress3Al(
        Pressure testPressure,
        Length outside,
        Length inside
    )
    {
        var (outer, inner) = (Math.Pow(outside.Metres, 2), Math.Pow(inside.Metres, 2));
        var stress = testPressure * (((1.3 * outer) + (0.4 * inner)) / (outer - inner));
        var working = Working
            .Of("Wall stress of a 3AL cylinder", "S = P·(1.3·D² + 0.4·d²)/(D² − d²)")
            .Input("P", "test pressure", testPressure.Megapascals, "MPa")
            .Input("D", "outside diameter", outside.Millimetres, "mm")
            .Input("d", "inside diameter", inside.Millimetres, "mm")
            .Result("S", "wall stress", stress.Megapascals, "MPa")
            .From("49 CFR 178.46(d).")
            .Build();
        return (stress, working);
    }

    /// <summary>Largest wall stress at the minimum test pressure: the smaller of 0.80 yield and 0.67 ultimate (from memory).</summary>
    public static Pressure LargestWallStress3Al(Pressure yield, Pressure ultimate) =>
        Pressure.FromPascals(Math.Min(0.80 * yield.Pascals, 0.67 * ultimate.Pascals));

    /// <summary>Test pressure 5/3 of service pressure (3AL above 450 psi).</summary>
    public static Pressure TestPressure3Al(Pressure service) => service * (5.0 / 3);

    /// <summary>Least burst pressure 2.5 times service pressure (3AL, from memory).</summary>
    public static Pressure BurstPressure3Al(Pressure service) => service * 2.5;

    /// <summary>Design stress factor of ISO 7866: the smaller of 0.65·Rm/Re and 0.85 (from memory).</summary>
    public static double StressFactorIso7866(Pressure yield, Pressure ultimate) =>
        Math.Min(0.65 * (ultimate / yield), 0.85);

    /// <summary>Wall of ISO 7866: D/2·(1 − √((F·Re − √3·ph)/(F·Re))) (from memory; equals von Mises at the bore = F·Re).</summary>
    /// <param name="outside">Outside diameter, above zero.</param>
    /// <param name="yield">Minimum yield strength, above zero.</param>
    /// <param name="testPressure">Test pressure, gauge, above zero.</param>
    /// <param name="stressFactor">Design stress factor, above zero, at most 1.</param>
    public static Computed<Length> WallIso7866(
        Length outside,
        Pressure yield,
        Pressure testPressure,
        double stressFactor
    )
    {
        var check = new InputCheck()
            .Positive("outside diameter", outside.Millimetres, "mm")
            .Positive("yield strength", yield.Megapascals, "MPa")
            .Positive("test pressure", testPressure.Megapascals, "MPa")
            .Between("design stress factor", stressFactor, 1e-6, 1);
        var left = 1 - (Math.Sqrt(3) * testPressure.Pascals / (stressFactor * yield.Pascals));
        check.Require(
            left > 0,
            RefusalReason.OutsideValidity,
            "test pressure",
            "No wall can hold it within the allowed stress.",
            "Lower the pressure or choose a stronger material."
        );
        if (!check.IsClean)
        {
            return check.Refused<Length>();
        }

        var wall = outside * ((1 - Math.Sqrt(left)) / 2);
        var working = Working
            .Of("Wall of a gas cylinder", "a = D/2·(1 − √((F·Re − √3·ph)/(F·Re)))")
            .Input("D", "outside diameter", outside.Millimetres, "mm")
            .Input("Re", "minimum yield strength", yield.Megapascals, "MPa")
            .Input("ph", "test pressure", testPressure.Megapascals, "MPa")
            .Input("F", "design stress factor", stressFactor)
            .Result("a", "required wall", wall.Millimetres, "mm")
            .From("ISO 7866 (from memory); equals the von Mises stress at the bore.")
            .Build();
        return Computed.Of(wall, working);
    }

    /// <summary>Test pressure 1.5 times filling pressure at 15 °C (ISO 7866, from memory).</summary>
    public static Pressure TestPressureIso7866(Pressure filling) => filling * 1.5;

    /// <summary>Least burst pressure 1.6 times test pressure (ISO 7866, from memory).</summary>
    public static Pressure BurstPressureIso7866(Pressure testPressure) => testPressure * 1.6;
}
