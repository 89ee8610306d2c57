using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Engineering.Tests.LeakTesting;

/// <summary>How the rows of unit, gas and pressure conversion and of bubbles are computed.</summary>
internal static class LeakConversionChecks
{
    private static readonly Temperature Freezing = Temperature.FromDegreesCelsius(0);
    private static readonly Temperature Room = Temperature.FromKelvin(293.15);

    public static CheckTable AddTo(CheckTable table) =>
        table
            .Number("F3.1", "in mbar l/s", _ => UnitCatalogue.Convert(1, "Pa m3/s", "mbar l/s"))
            .Number(
                "F3.2",
                "in atm cm3/s (same temperature)",
                _ => UnitCatalogue.Convert(1, "Pa m3/s", "atm cm3/s")
            )
            .Number("F3.3", "in mbar l/s", _ => UnitCatalogue.Convert(1, "atm cm3/s", "mbar l/s"))
            .Number(
                "F3.5",
                "in atm cm3/s, published",
                _ => UnitCatalogue.Convert(1, "Pa m3/s", "atm cm3/s")
            )
            .Number(
                "F3.5",
                "in mbar l/s, published",
                _ => UnitCatalogue.Convert(1, "atm cm3/s", "mbar l/s")
            )
            .Number(
                "F3.5",
                "torr l/s in mbar l/s, published",
                _ => UnitCatalogue.Convert(1, "torr l/s", "mbar l/s")
            )
            .Number(
                "F3.5",
                "in torr l/s, published",
                _ => UnitCatalogue.Convert(1, "atm cm3/s", "torr l/s")
            )
            .Number("F3.6", "as throughput at 20 degC", _ => OneStandard(Room).SiValue)
            .Number(
                "F3.6",
                "as amount rate",
                _ => LeakRates.MolesPerSecond(OneStandard(Room), Room)
            )
            .Number(
                "F3.6",
                "as amount rate, per minute unit",
                _ => LeakRates.MolesPerSecond(OneStandard(Room) / 60, Room)
            )
            .Number("F3.8", "mass leak rate of air", AirMass)
            .Number("F3.9", "time", OnePerCent)
            .Number(
                "F4.N2",
                "viscous factor He -> N2",
                _ => FromHelium(TestGas.Nitrogen).ViscousFactor
            )
            .Number(
                "F4.N2",
                "molecular factor He -> N2",
                _ => FromHelium(TestGas.Nitrogen).MolecularFactor
            )
            .Number(
                "F4.N2",
                "viscous factor He -> N2, published",
                _ => FromHelium(TestGas.Nitrogen).ViscousFactor
            )
            .Number(
                "F4.N2",
                "molecular factor He -> N2, published",
                _ => FromHelium(TestGas.Nitrogen).MolecularFactor
            )
            .Number(
                "F4.air",
                "viscous factor He -> air",
                _ => FromHelium(TestGas.Air).ViscousFactor
            )
            .Number(
                "F4.air",
                "molecular factor He -> air",
                _ => FromHelium(TestGas.Air).MolecularFactor
            )
            .Number(
                "F4.air",
                "viscous factor He -> air, published",
                _ => FromHelium(TestGas.Air).ViscousFactor
            )
            .Number(
                "F4.air",
                "molecular factor He -> air, published",
                _ => FromHelium(TestGas.Air).MolecularFactor
            )
            .Number(
                "F4.Ar",
                "viscous factor He -> Ar",
                _ => FromHelium(TestGas.Argon).ViscousFactor
            )
            .Number(
                "F4.Ar",
                "molecular factor He -> Ar",
                _ => FromHelium(TestGas.Argon).MolecularFactor
            )
            .Number(
                "F4.Ar",
                "viscous factor He -> Ar, published",
                _ => FromHelium(TestGas.Argon).ViscousFactor
            )
            .Number(
                "F4.Ar",
                "molecular factor He -> Ar, published",
                _ => FromHelium(TestGas.Argon).MolecularFactor
            )
            .Number(
                "F5.1",
                "leak rate at the new pressure",
                _ => AtTwentyAtmospheres().Viscous.SiValue
            )
            .Number(
                "F5.1",
                "leak rate at the new pressure, published",
                _ => AtTwentyAtmospheres().Viscous.SiValue
            )
            .Number(
                "F5.1",
                "equivalent air leak rate",
                _ => AtTwentyAtmospheres().Viscous.SiValue * 1.08
            )
            .Number(
                "F5.1",
                "equivalent air leak rate, published",
                _ => AtTwentyAtmospheres().Viscous.SiValue * 1.08
            )
            .Number(
                "F5.2",
                "leak rate at the new pressure, molecular",
                _ => AtTwentyAtmospheres().Molecular.SiValue
            )
            .Number("F5.3", "service leak rate (viscous)", row => Service(row).Viscous.SiValue)
            .Number("F5.4", "service leak rate (molecular)", row => Service(row).Molecular.SiValue)
            .Number("F6", "time per bubble", BubbleSeconds)
            .Number("F6", "time per bubble, published", BubbleSeconds)
            .Number("F6.6", "leak rate from counted bubbles", row => Bubbles(row).Rate.SiValue)
            .Number(
                "F6.8",
                "volume rate of gas at 1 bar",
                row =>
                    1e9
                    * LeakRates.CubicMetresPerSecond(
                        LeakRate.FromSi(1e-5),
                        Pressure.FromPascals(row["p_Pa"])
                    )
            );

    private static LeakRate OneStandard(Temperature gas) =>
        LeakRates.FromStandardCubicCentimetresPerSecond(1, Freezing, gas);

    private static double AirMass(CheckRow row) =>
        LeakRates.KilogramsPerSecond(
            LeakRate.FromSi(row["q_Pa_m3_s"]),
            Temperature.FromKelvin(row["T_K"]),
            TestGas.Air
        );

    private static double OnePerCent(CheckRow row) =>
        LeakRates
            .TimeToLose(
                0.01,
                Pressure.FromPascals(row["p_abs_Pa"]),
                Volume.FromCubicMetres(row["V_m3"]),
                LeakRate.FromSi(row["q_Pa_m3_s"])
            )
            .TotalDays;

    private static LeakConversion FromHelium(TestGas gas) =>
        LeakConversion
            .Compute(LeakRate.FromSi(1), AtBar(TestGas.Helium, 6, 1), AtBar(gas, 6, 1))
            .Value;

    private static LeakConversion AtTwentyAtmospheres() =>
        LeakConversion
            .Compute(LeakRate.FromSi(0.001), AtBar(TestGas.Air, 10, 1), AtBar(TestGas.Air, 20, 1))
            .Value;

    private static LeakConversion Service(CheckRow row) =>
        LeakConversion
            .Compute(
                LeakRate.FromSi(row["q_test_Pa_m3_s"]),
                AtBar(TestGas.Helium, row["p_test_abs_bar"], row["p_out_bar"]),
                AtBar(TestGas.Nitrogen, row["p_service_abs_bar"], row["p_out_bar"])
            )
            .Value;

    private static LeakCondition AtBar(TestGas gas, double inside, double outside) =>
        new(gas, Pressure.FromBar(inside), Pressure.FromBar(outside));

    private static double BubbleSeconds(CheckRow row) =>
        BubbleImmersion.SecondsPerBubble(
            LeakRate.FromSi(row["q_cm3_s"] * 1e-6 * 1e5),
            Length.FromMillimetres(row["d_mm"]),
            Pressure.FromPascals(1e5)
        );

    private static BubbleImmersion Bubbles(CheckRow row) =>
        BubbleImmersion
            .Evaluate(
                new(
                    Length.FromMillimetres(row["d_mm"]),
                    Length.Zero,
                    (int)row["N"],
                    TimeSpan.FromSeconds(row["t_s"]),
                    Pressure.FromPascals(row["p_bubble_abs_Pa"])
                )
            )
            .Value;
}
