namespace WeldTrace.Engineering.LeakTesting;

internal static class DecayWorking
{
    private const string Unit = "Pa·m³/s";

    public static Working Show(PressureDecay decay)
    {
        var working = Begin(decay);
        if (decay.FitUncertainty is { } fit)
        {
            working.Step(
                "",
                "standard uncertainty from the scatter about the line",
                fit.SiValue,
                Unit
            );
        }

        return working
            .Step("", "rate without compensation", decay.UncompensatedRate.SiValue, Unit)
            .Step(
                "",
                "last pressure at the first temperature",
                decay.CorrectedFinalPressure.Pascals,
                "Pa"
            )
            .Step(
                "u0",
                "standard uncertainty at zero leak",
                decay.ZeroLeakUncertainty.SiValue,
                Unit
            )
            .Result("q", "leak rate", decay.Rate.SiValue, Unit)
            .Result("u", "combined standard uncertainty", decay.StandardUncertainty.SiValue, Unit)
            .Result("U", "expanded uncertainty, k = 2", decay.ExpandedUncertainty.SiValue, Unit)
            .Result("", "decision threshold", decay.DecisionThreshold.SiValue, Unit)
            .Result("", "detection limit", decay.DetectionLimit.SiValue, Unit)
            .From(
                "Form of 40 CFR 1065.644; uncertainty by first-order propagation (GUM); threshold and limit in the style of ISO 11929 (from memory)."
            )
            .Validity(
                Validity.When(
                    !decay.IsApparentGain,
                    "The gas cannot grow in a closed vessel.",
                    "look for a temperature or gauge error, or gas coming from the supply."
                )
            )
            .Build();
    }

    private static WorkingBuilder Begin(PressureDecay decay)
    {
        var (test, first, last) = (decay.Test, decay.Test.Readings[0], decay.Test.Readings[^1]);
        var formula =
            test.Method == DecayMethod.TwoPoint
                ? "q = V·Tref·(p1/T1 − p2/T2)/Δt"
                : "q = −V·slope of p·Tref/T against t (least squares)";
        return Working
            .Of("Leak rate from pressure decay", formula)
            .Input("V", "test volume", test.Volume.Litres, "l")
            .Input("p1", "first absolute pressure", first.AbsolutePressure.Pascals, "Pa")
            .Input("T1", "first gas temperature", first.GasTemperature.Kelvin, "K")
            .Input("p2", "last absolute pressure", last.AbsolutePressure.Pascals, "Pa")
            .Input("T2", "last gas temperature", last.GasTemperature.Kelvin, "K")
            .Input("Δt", "duration", decay.Duration.TotalSeconds, "s")
            .Input("Tref", "reference temperature", decay.Reference.Kelvin, "K")
            .Input("n", "number of readings", test.Readings.Count)
            .Input("u_V", "standard uncertainty of the volume", test.Uncertainty.Volume.Litres, "l")
            .Input(
                "u_p",
                "standard uncertainty of a pressure",
                test.Uncertainty.Pressure.Pascals,
                "Pa"
            )
            .Input(
                "u_T",
                "standard uncertainty of a temperature",
                test.Uncertainty.TemperatureKelvin,
                "K"
            )
            .Input(
                "u_t",
                "standard uncertainty of the duration",
                test.Uncertainty.Duration.TotalSeconds,
                "s"
            );
    }
}
