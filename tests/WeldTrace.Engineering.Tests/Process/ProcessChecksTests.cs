using WeldTrace.Engineering.Process;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.Process;

/// <summary>
/// Every row of a_process.csv: computed by a second route named in the table; heat shares published by Schmidt, Hattel, Wert
/// 2004 (from memory) and Chao, Qi, Tang 2003 (abstract).
/// </summary>
public sealed class ProcessChecksTests
{
    private static readonly CheckTable Table = new CheckTable("a_process.csv")
        .Number("A1", "weld pitch", row => Kinematics(row).Pitch.MillimetresPerRevolution)
        .Number("A1", "revolutions per millimetre", row => Kinematics(row).RevolutionsPerMillimetre)
        .Number(
            "A2",
            "peripheral speed",
            row => Kinematics(row).ShoulderSpeed!.Value.MetresPerSecond
        )
        .Number(
            "A2",
            "speed of the shoulder edge relative to the work, advancing side",
            row => Kinematics(row).AdvancingEdgeSpeed!.Value.MetresPerSecond
        )
        .Number(
            "A2",
            "speed of the shoulder edge relative to the work, retreating side",
            row => Kinematics(row).RetreatingEdgeSpeed!.Value.MetresPerSecond
        )
        .Number("A3", "pseudo heat index", row => Heat(row).Index)
        .Number(
            "A3",
            "peak temperature estimate",
            row => Heat(row).Estimate(row["K"], row["alpha"]).DegreesCelsius
        )
        .Number("A4", "mechanical power", row => Power(row).TotalPower.Watts)
        .Number("A4", "line energy into the weld", row => Power(row).LineEnergy.JoulesPerMillimetre)
        .Number("A4", "traverse power Fx*v", row => Power(row).TraversePower.Watts)
        .Number("A4", "total power", row => Power(row).TotalPower.Watts)
        .Number("A5", "Q1 shoulder", row => Analytic(row).Shoulder.Watts)
        .Number("A5", "Q2 pin side", row => Analytic(row).PinSide.Watts)
        .Number("A5", "Q3 pin tip", row => Analytic(row).PinTip.Watts)
        .Number("A5", "Q total", row => Analytic(row).Total.Watts)
        .Number("A5", "equivalent torque", row => Analytic(row).Torque.NewtonMetres)
        .Number("A5", "fraction shoulder", row => Analytic(row).Shoulder / Analytic(row).Total)
        .Number("A5", "fraction pin side", row => Analytic(row).PinSide / Analytic(row).Total)
        .Number("A5", "fraction pin tip", row => Analytic(row).PinTip / Analytic(row).Total)
        .Number(
            "A5",
            "published fraction shoulder",
            row => Analytic(row).Shoulder / Analytic(row).Total
        )
        .Number(
            "A5",
            "published fraction pin side",
            row => Analytic(row).PinSide / Analytic(row).Total
        )
        .Number(
            "A5",
            "published fraction pin tip",
            row => Analytic(row).PinTip / Analytic(row).Total
        )
        .Number(
            "A5",
            "contact shear stress (von Mises)",
            row => ContactShear.Sticking(Yield(row)).Pascals
        )
        .Number(
            "A5",
            "contact shear stress (Tresca)",
            row => ContactShear.StickingTresca(Yield(row)).Pascals
        )
        .Number("A5", "contact shear stress", row => Sliding(row).Pascals)
        .Number("A5", "Q total, partial sliding/sticking", PartialHeat)
        .Number("A6", "temperature rise, thick", row => Source(row).ThickKelvin)
        .Number("A6", "temperature rise, thin", row => Source(row).ThinKelvin)
        .Number(
            "A6",
            "temperature rise at the top surface, finite thickness",
            row => Source(row).FiniteKelvin
        )
        .Number("A6", "thermal diffusivity", row => Material(row).SquareMetresPerSecond)
        .Number("A6", "modified Bessel function K0", Bessel)
        .Number("A6", "modified Bessel function K0(1)", Bessel)
        .Number("A6", "modified Bessel function K0(5)", Bessel)
        .Number("A7", "peak temperature rise", Peak)
        .Number(
            "A7",
            "constant in the thin-plate peak-temperature equation (printed as 4.13)",
            _ => MovingSource.PeakConstant
        )
        .Number("A8.1", "published share to workpiece", _ => PowerInput.UsualShare)
        .Number("A8.2", "published share", _ => AnalyticHeat.PlasticWorkShare);

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void Process_CheckedRow_MatchesExpected(int index, string label)
    {
        Assert.Equal(label, Table.Rows[index].ToString());
        Table.Run(index);
    }

    private static RotationSpeed Spindle(CheckRow row) =>
        RotationSpeed.FromRevolutionsPerMinute(row.Or("n_rpm", 400));

    private static Speed Travel(CheckRow row) =>
        Speed.FromMillimetresPerMinute(row.Or("v_mm_min", 200));

    private static WeldKinematics Kinematics(CheckRow row) =>
        WeldKinematics
            .Compute(Spindle(row), Travel(row), Length.FromMillimetres(row.Or("d_mm", 18)))
            .Value;

    private static HeatIndex Heat(CheckRow row) =>
        HeatIndex
            .Compute(Spindle(row), Travel(row), Temperature.FromDegreesCelsius(row["Tm_degC"]))
            .Value;

    private static PowerInput Power(CheckRow row) =>
        PowerInput
            .Compute(
                Spindle(row),
                Torque.FromNewtonMetres(row["M_N_m"]),
                Travel(row),
                row.Or("eta", 1),
                Force.FromNewtons(row.Or("Fx_N", 0))
            )
            .Value;

    private static ToolGeometry Tool(CheckRow row) =>
        new(
            Length.FromMetres(row["R_shoulder_m"]),
            Length.FromMetres(row["R_pin_m"]),
            Length.FromMetres(row["H_pin_m"]),
            Angle.FromDegrees(row["cone_deg"])
        );

    private static AnalyticHeat Analytic(CheckRow row) =>
        AnalyticHeat
            .Compute(Tool(row), Spindle(row), Pressure.FromPascals(row.Or("tau_Pa", 1e6)))
            .Value;

    private static Pressure Yield(CheckRow row) => Pressure.FromPascals(row["sigma_y_Pa"]);

    private static Pressure Sliding(CheckRow row) =>
        ContactShear.Sliding(
            row["mu"],
            Force.FromNewtons(row["F_N"]),
            Length.FromMetres(row["R_shoulder_m"])
        );

    private static double PartialHeat(CheckRow row)
    {
        var stick = AnalyticHeat
            .Compute(Tool(row), Spindle(row), ContactShear.Sticking(Yield(row)))
            .Value;
        var slide = AnalyticHeat.Compute(Tool(row), Spindle(row), Sliding(row)).Value;
        return AnalyticHeat.Partial(stick, slide, row["delta"]).Watts;
    }

    private static ThermalMaterial Material(CheckRow row) =>
        new(row["k_W_mK"], row["rho_kg_m3"], row["cp_J_kgK"]);

    private static MovingSource Source(CheckRow row) =>
        MovingSource
            .Compute(
                Engineering.Quantities.Power.FromWatts(row["Q_W"]),
                Travel(row),
                Material(row),
                Length.FromMetres(row["h_m"]),
                new(
                    Length.FromMetres(row["xi_m"]),
                    Length.FromMetres(row["y_m"]),
                    Length.FromMetres(row["z_m"])
                ),
                Length.FromMillimetres(9)
            )
            .Value;

    /// <summary>K0 through the thin plate: with k = Q/(2πh), v = 2a and no distance ahead the rise is K0(y).</summary>
    private static double Bessel(CheckRow row)
    {
        var unit = new ThermalMaterial(1 / (2 * Math.PI), 1, 1);
        var source = MovingSource.Compute(
            Engineering.Quantities.Power.FromWatts(1),
            Speed.FromMetresPerSecond(2 * unit.SquareMetresPerSecond),
            unit,
            Length.FromMetres(1),
            new(Length.Zero, Length.FromMetres(row["x"]), Length.Zero),
            Length.FromMillimetres(9)
        );
        return source.Value.ThinKelvin;
    }

    private static double Peak(CheckRow row) =>
        MovingSource.PeakKelvin(
            LineEnergy.FromJoulesPerMetre(row["q_J_per_m"]),
            new(167, row["rho_kg_m3"], row["cp_J_kgK"]),
            Length.FromMetres(row["h_m"]),
            Length.FromMetres(row["y_m"])
        );
}
