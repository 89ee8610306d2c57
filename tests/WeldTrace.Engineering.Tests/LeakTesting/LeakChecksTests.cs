using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;
using WeldTrace.Engineering.Tests.Checks;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Engineering.Tests.LeakTesting;

/// <summary>
/// Every row of f_leak.csv: states and inputs of 40 CFR 1065.644, conversions and bubble times as published by makers of leak
/// test equipment, the rest computed by a second route named in the table.
/// </summary>
public sealed class LeakChecksTests
{
    private static readonly Temperature Freezing = Temperature.FromDegreesCelsius(0);
    private static readonly Temperature Room = Temperature.FromKelvin(293.15);

    private static readonly CheckTable Table = new CheckTable("f_leak.csv")
        .Number("F1", "molar leak rate", _ => RisingVacuum())
        .Number("F1", "molar leak rate, published rounding", _ => RisingVacuum())
        .Number("F2", "leak rate, temperature-compensated", row => Decay(row).Rate.SiValue)
        .Number("F2", "leak rate, uncompensated", row => Decay(row).UncompensatedRate.SiValue)
        .Number(
            "F2",
            "final pressure corrected to T1",
            row => Decay(row).CorrectedFinalPressure.Pascals
        )
        .Number(
            "F2",
            "leak rate, temperature-compensated, in mbar l/s",
            row => Decay(row).Rate.MillibarLitresPerSecond
        )
        .Number("F2", "leak rate in std cm3/s (273.15 K)", StandardRate)
        .Number(
            "F2.5",
            "apparent pressure change for 0.1 K",
            row => Apparent(Pressure.FromPascals(row["p_abs_Pa"]), row).Pascals
        )
        .Number(
            "F2.6",
            "apparent pressure change for 0.1 K at 350 bar",
            row => Apparent(Pressure.FromBar(row["p_abs_bar"]), row).Bar
        )
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
        .Number("F3.6", "as amount rate", _ => LeakRates.MolesPerSecond(OneStandard(Room), Room))
        .Number(
            "F3.6",
            "as amount rate, per minute unit",
            _ => LeakRates.MolesPerSecond(OneStandard(Room) / 60, Room)
        )
        .Number("F3.8", "mass leak rate of air", AirMass)
        .Number("F3.9", "time", OnePerCent)
        .Number("F4.N2", "viscous factor He -> N2", _ => FromHelium(TestGas.Nitrogen).ViscousFactor)
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
        .Number("F4.air", "viscous factor He -> air", _ => FromHelium(TestGas.Air).ViscousFactor)
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
        .Number("F4.Ar", "viscous factor He -> Ar", _ => FromHelium(TestGas.Argon).ViscousFactor)
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
        .Number("F5.1", "leak rate at the new pressure", _ => AtTwentyAtmospheres().Viscous.SiValue)
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
        )
        .Number(
            "F7",
            "standard uncertainty of the leak rate at zero leak",
            row => Sensitivity(row).StandardUncertainty.SiValue
        )
        .Number(
            "F7",
            "decision threshold (one-sided 95 %)",
            row => Sensitivity(row).DecisionThreshold.SiValue
        )
        .Number(
            "F7",
            "detection limit (alpha = beta = 5 %)",
            row => Sensitivity(row).DetectionLimit.SiValue
        )
        .Number(
            "F7",
            "test duration needed to detect 1e-3 Pa m3/s",
            row => Sensitivity(row).HoldTimeFor(LeakRate.FromSi(row["q_lim"])).TotalSeconds
        )
        .Number(
            "F7.5",
            "standard uncertainty of one reading",
            row =>
                StandardUncertainty
                    .FromResolution(Pressure.FromPascals(row["resolution_Pa"]))
                    .Pascals
        )
        .Number("F7.6", "leak rate", _ => Uncertain().Rate.SiValue)
        .Number(
            "F7.6",
            "combined standard uncertainty",
            _ => Uncertain().StandardUncertainty.SiValue
        )
        .Number("F7.6", "expanded uncertainty k = 2", _ => Uncertain().ExpandedUncertainty.SiValue)
        .Number(
            "F8",
            "slope",
            row => -Fitted(row, DecayMethod.LeastSquares).Rate.SiValue / row["V_m3"]
        )
        .Number(
            "F8",
            "leak rate from the fit",
            row => Fitted(row, DecayMethod.LeastSquares).Rate.SiValue
        )
        .Number(
            "F8",
            "standard uncertainty from the fit",
            row => Fitted(row, DecayMethod.LeastSquares).FitUncertainty!.Value.SiValue
        )
        .Number(
            "F8",
            "leak rate from first and last point",
            row => Fitted(row, DecayMethod.TwoPoint).Rate.SiValue
        );

    public static TheoryData<int, string> Data => Table.Data;

    [Theory]
    [MemberData(nameof(Data))]
    public void Leak_CheckedRow_MatchesExpected(int index, string label)
    {
        Assert.Equal(label, Table.Rows[index].ToString());
        Table.Run(index);
    }

    [Fact]
    public void Readings_OfTheFit_AreThoseOfTheDataset()
    {
        var row = Table.Rows.Single(row => row.Id == "F8.1" && row.Quantity == "slope");
        var dataset = CsvLines.Read("dataset_f_decay.csv").Skip(1).ToList();
        Assert.Equal(string.Join('|', dataset.Select(line => line[1])), row.Text("p_abs_Pa"));
        Assert.Equal(string.Join('|', dataset.Select(line => line[2])), row.Text("T_K"));
    }

    private static double RisingVacuum()
    {
        var row = Table.Rows[0];
        var rate = Decay(row).Rate * -1;
        return LeakRates.MolesPerSecond(rate, Temperature.FromKelvin(row["T1_K"]), row["R"]);
    }

    private static PressureDecay Decay(CheckRow row)
    {
        var test = DecayRecords.TwoPoint(
            row["V_m3"],
            (0, row["p1_abs_Pa"], row["T1_K"]),
            (row["dt_s"], row["p2_abs_Pa"], row["T2_K"])
        );
        var reference = Temperature.FromKelvin(row.Or("T_ref_K", row["T1_K"]));
        return PressureDecay.Evaluate(test with { Reference = reference }).Value;
    }

    private static double StandardRate(CheckRow row)
    {
        var decay = Decay(row);
        return LeakRates.StandardCubicCentimetresPerSecond(decay.Rate, decay.Reference, Freezing);
    }

    private static Pressure Apparent(Pressure absolute, CheckRow row) =>
        LeakRates.ApparentChange(absolute, Temperature.FromKelvin(row["T_K"]), row["dT_K"]);

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

    private static DecaySensitivity Sensitivity(CheckRow row) =>
        DecaySensitivity
            .Compute(
                Volume.FromCubicMetres(row["V_m3"]),
                Pressure.FromPascals(row["p_abs_Pa"]),
                Temperature.FromKelvin(row["T_K"]),
                TimeSpan.FromSeconds(row["dt_s"]),
                DecayRecords.Uncertainty(0, row["u_p_Pa"], row["u_T_K"], 0)
            )
            .Value;

    private static PressureDecay Uncertain()
    {
        var row = Table.Rows.First(row => row.Id == "F7.6");
        var test = DecayRecords.TwoPoint(
            row["V_m3"],
            (0, row["p1_abs_Pa"], row["T1_K"]),
            (row["dt_s"], row["p2_abs_Pa"], row["T2_K"])
        );
        var uncertainty = DecayRecords.Uncertainty(row["u_V"], row["u_p"], row["u_T"], row["u_t"]);
        return PressureDecay.Evaluate(test with { Uncertainty = uncertainty }).Value;
    }

    private static PressureDecay Fitted(CheckRow row, DecayMethod method)
    {
        var (times, pressures, kelvins) = (row.List("t_s"), row.List("p_abs_Pa"), row.List("T_K"));
        var readings = times.Select((time, i) => (time, pressures[i], kelvins[i])).ToArray();
        var test = DecayRecords.TwoPoint(row["V_m3"], readings) with
        {
            Method = method,
            Reference = Temperature.FromKelvin(row["T_ref_K"]),
        };
        return PressureDecay.Evaluate(test).Value;
    }
}
