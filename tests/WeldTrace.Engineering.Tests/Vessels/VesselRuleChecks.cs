using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Materials;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Engineering.Tests.Vessels;

/// <summary>How the rows of thickness rules, test pressures and expansion tests are computed.</summary>
internal static class VesselRuleChecks
{
    public static CheckTable AddTo(CheckTable table) =>
        AddPressures(AddEn(AddAsme(table)))
            .Number(
                "D6",
                "wall stress",
                row =>
                    GasCylinderRules
                        .WallStress3Al(Mpa(row["P"]), Mm(row["D_outside"]), Mm(row["d_inside"]))
                        .Value.Megapascals
            )
            .Number(
                "D6.4",
                "6061-T6 minimum ultimate strength",
                _ => Strong6061().MinimumUltimate!.Value.PoundsPerSquareInch
            )
            .Number(
                "D6.4",
                "6061-T6 minimum yield strength",
                _ => Strong6061().MinimumYield!.Value.PoundsPerSquareInch
            )
            .Number(
                "D6.4",
                "allowable wall stress",
                row =>
                    GasCylinderRules
                        .LargestWallStress3Al(Psi(row["yield_psi"]), Psi(row["ultimate_psi"]))
                        .PoundsPerSquareInch
            )
            .Number(
                "D7.1",
                "required wall thickness",
                row =>
                    GasCylinderRules
                        .WallIso7866(
                            Mm(row["D_outside_mm"]),
                            Mpa(row["Re_MPa"]),
                            Mpa(row["p_h_MPa"]),
                            row["F"]
                        )
                        .Value.Millimetres
            )
            .Number(
                "D7.3",
                "design stress factor",
                row => GasCylinderRules.StressFactorIso7866(Mpa(row["Re_MPa"]), Mpa(row["Rm_MPa"]))
            )
            .Number("D14.1", "permanent expansion", row => Expansion(row).PermanentPercent)
            .Number(
                "D14.2",
                "permanent expansion at the 10 % limit",
                row => Expansion(row).PermanentPercent
            )
            .Number("D14.4", "total expansion", TotalFromWater);

    private static CheckTable AddAsme(CheckTable table) =>
        table
            .Number(
                "D4",
                "required thickness, cylinder, circumferential stress",
                row => InUnit(row, AsmeThickness.CylinderHoop(Case(row)))
            )
            .Number(
                "D4",
                "required thickness, cylinder, longitudinal stress",
                row => InUnit(row, AsmeThickness.CylinderAxial(Case(row)))
            )
            .Number(
                "D4",
                "required thickness, sphere",
                row => InUnit(row, AsmeThickness.Sphere(Case(row)))
            )
            .Number(
                "D4",
                "required thickness from the outside radius (same vessel)",
                row => InUnit(row, FromOutside(row))
            )
            .Number(
                "D4",
                "required thickness, thick-wall form",
                row => InUnit(row, AsmeThickness.CylinderThick(Case(row)))
            )
            .Number(
                "D4.5",
                "UG-27(c)(1) pressure limit 0.385SE",
                row => AsmeThickness.HoopPressureLimit(Mpa(row["S"]), row["E"]).Megapascals
            )
            .Number(
                "D4.5",
                "UG-27(c)(2) pressure limit 1.25SE",
                row => AsmeThickness.AxialPressureLimit(Mpa(row["S"]), row["E"]).Megapascals
            )
            .Number(
                "D4.5",
                "UG-27(d) pressure limit 0.665SE",
                row => AsmeThickness.SpherePressureLimit(Mpa(row["S"]), row["E"]).Megapascals
            );

    private static CheckTable AddEn(CheckTable table) =>
        table
            .Number(
                "D5.1",
                "design stress",
                row =>
                    EnThickness
                        .DesignStress(Mpa(row["Rp02_t_MPa"]), Mpa(row["Rm_20_MPa"]))
                        .Megapascals
            )
            .Number(
                "D5.1",
                "required thickness",
                row => EnThickness.CylinderFromOutside(En(row, row["De_mm"])).Value.Millimetres
            )
            .Wrong(
                "D5.1",
                "value the misprinted formula gives (must NOT be reported)",
                row => EnThickness.CylinderFromOutside(En(row, row["De_mm"])).Value.Millimetres
            )
            .Number(
                "D5",
                "required thickness, cylinder",
                row => EnThickness.Cylinder(En(row, row["Di_mm"])).Value.Millimetres
            )
            .Number(
                "D5",
                "required thickness, sphere",
                row => EnThickness.Sphere(En(row, row["Di_mm"])).Value.Millimetres
            )
            .Number("D5", "maximum pressure at the required thickness, cylinder", EnRoundTrip);

    private static CheckTable AddPressures(CheckTable table) =>
        table
            .Number(
                "D10",
                "hydrostatic test pressure",
                row =>
                    TestPressures
                        .AsmeHydrostatic(
                            Mpa(row["MAWP_MPa"]),
                            row["S_test_MPa"] / row["S_design_MPa"]
                        )
                        .Megapascals
            )
            .Number(
                "D10",
                "pneumatic test pressure",
                row =>
                    TestPressures
                        .AsmePneumatic(
                            Mpa(row["MAWP_MPa"]),
                            row["S_test_MPa"] / row["S_design_MPa"]
                        )
                        .Megapascals
            )
            .Number(
                "D10",
                "hydrostatic test pressure, EN 13445-5",
                row =>
                    TestPressures
                        .EnHydrostatic(Mpa(row["Pd_MPa"]), row["f_a_MPa"] / row["f_t_MPa"])
                        .Megapascals
            )
            .Number(
                "D11",
                "proof factor",
                row => TestPressures.AiaaProofFactor(row["burst_factor"])
            )
            .Number("D11", "proof pressure", row => Ladder(row).Proof.Megapascals)
            .Number(
                "D11",
                "minimum design burst pressure",
                row => Ladder(row).LeastBurst.Megapascals
            )
            .Number(
                "D11.4",
                "proof test pressure with environmental correction",
                row => Corrected(row).Proof.Megapascals
            )
            .Number(
                "D11.5",
                "minimum test pressure (5/3 rule)",
                row => GasCylinderRules.TestPressure3Al(Psi(row["service_psi"])).PoundsPerSquareInch
            )
            .Number(
                "D11.5",
                "minimum burst pressure",
                row =>
                    GasCylinderRules.BurstPressure3Al(Psi(row["service_psi"])).PoundsPerSquareInch
            )
            .Number(
                "D11.6",
                "test pressure",
                row => GasCylinderRules.TestPressureIso7866(Pressure.FromBar(row["p_w_bar"])).Bar
            )
            .Number(
                "D11.6",
                "minimum burst pressure",
                row =>
                    GasCylinderRules
                        .BurstPressureIso7866(
                            GasCylinderRules.TestPressureIso7866(Pressure.FromBar(row["p_w_bar"]))
                        )
                        .Bar
            );

    private static Alloy Strong6061() => AlloyLibrary.Find("6061-T6")!;

    private static bool IsInch(CheckRow row) => row.Text("units") == "psi, in";

    private static DesignCase Case(CheckRow row) =>
        IsInch(row)
            ? new(Psi(row["P"]), Length.FromInches(row["R_inside"]), Psi(row["S"]), row["E"])
            : new(Mpa(row["P"]), Mm(row["R_inside"]), Mpa(row["S"]), row["E"]);

    private static Computed<Length> FromOutside(CheckRow row)
    {
        var design = Case(row);
        var outside = design.InsideRadius + AsmeThickness.CylinderHoop(design).Value;
        return AsmeThickness.CylinderFromOutsideRadius(design with { InsideRadius = outside });
    }

    private static double InUnit(CheckRow row, Computed<Length> length) =>
        IsInch(row) ? length.Value.Inches : length.Value.Millimetres;

    private static DesignCase En(CheckRow row, double diameter) =>
        new(Mpa(row["P_MPa"]), Mm(diameter / 2), Mpa(row["f_MPa"]), row["z"]);

    private static double EnRoundTrip(CheckRow row)
    {
        var design = En(row, row["Di_mm"]);
        var thickness = EnThickness.Cylinder(design).Value;
        return EnThickness
            .LargestPressure(design.WeldedStress, design.InsideRadius, thickness)
            .Megapascals;
    }

    private static PressureLadder Ladder(CheckRow row)
    {
        var burst = row["burst_factor"];
        var factors = new LadderFactors(
            TestPressures.AiaaProofFactor(burst),
            burst,
            "ANSI/AIAA S-080, from memory"
        );
        return PressureLadder.Compute(Mpa(row["MEOP_MPa"]), factors).Value;
    }

    private static PressureLadder Corrected(CheckRow row)
    {
        var correction = TestPressures.EnvironmentalCorrection(
            Mpa(row["F_test_MPa"]),
            Mpa(row["F_oper_MPa"])
        );
        var factors = new LadderFactors(
            row["proof_factor"],
            2,
            "ANSI/AIAA S-080, from memory",
            correction
        );
        return PressureLadder.Compute(Mpa(row["MEOP_MPa"]), factors).Value;
    }

    private static VolumetricExpansion Expansion(CheckRow row) =>
        VolumetricExpansion
            .Evaluate(
                Volume.FromCubicCentimetres(row["TE_cm3"]),
                Volume.FromCubicCentimetres(row["PE_cm3"]),
                0,
                WrittenLimit.Parse("10", "%")
            )
            .Value;

    private static double TotalFromWater(CheckRow row) =>
        VolumetricExpansion
            .TotalFromWater(
                Volume.FromCubicCentimetres(row["W_in_cm3"]),
                Volume.FromCubicCentimetres(row["V_cm3"]),
                Mpa(row["p_MPa"]),
                row["beta_1_per_MPa"] * 1e-6
            )
            .CubicCentimetres;

    private static Pressure Mpa(double value) => Pressure.FromMegapascals(value);

    private static Pressure Psi(double value) => Pressure.FromPoundsPerSquareInch(value);

    private static Length Mm(double value) => Length.FromMillimetres(value);
}
