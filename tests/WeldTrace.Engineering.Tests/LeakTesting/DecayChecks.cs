using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;
using WeldTrace.Engineering.Tests.Checks;

namespace WeldTrace.Engineering.Tests.LeakTesting;

/// <summary>How the rows of pressure decay and its sensitivity are computed.</summary>
internal static class DecayChecks
{
    private static readonly Temperature Freezing = Temperature.FromDegreesCelsius(0);

    public static CheckTable AddTo(CheckTable table) =>
        table
            .Number("F1", "molar leak rate", _ => RisingVacuum(table))
            .Number("F1", "molar leak rate, published rounding", _ => RisingVacuum(table))
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
            .Number("F7.6", "leak rate", _ => Uncertain(table).Rate.SiValue)
            .Number(
                "F7.6",
                "combined standard uncertainty",
                _ => Uncertain(table).StandardUncertainty.SiValue
            )
            .Number(
                "F7.6",
                "expanded uncertainty k = 2",
                _ => Uncertain(table).ExpandedUncertainty.SiValue
            )
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

    private static double RisingVacuum(CheckTable table)
    {
        var row = table.Rows[0];
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

    private static PressureDecay Uncertain(CheckTable table)
    {
        var row = table.Rows.First(row => row.Id == "F7.6");
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
