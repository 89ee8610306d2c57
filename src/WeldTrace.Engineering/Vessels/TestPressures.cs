using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>Test pressures of several rules, for comparison; factors that decide are data of the design with their source.</summary>
public static class TestPressures
{
    /// <summary>Hydrostatic, 1.3·MAWP·LSR (ASME VIII-1 UG-99(b), read as quoted).</summary>
    /// <param name="mawp">Maximum allowable working pressure, gauge.</param>
    /// <param name="lowestStressRatio">Lowest ratio of allowable stress at test over design temperature of all materials of the vessel.</param>
    public static Pressure AsmeHydrostatic(Pressure mawp, double lowestStressRatio) =>
        mawp * (1.3 * lowestStressRatio);

    /// <summary>Pneumatic, 1.1·MAWP·LSR (ASME VIII-1 UG-100, from memory).</summary>
    /// <param name="mawp">Maximum allowable working pressure, gauge.</param>
    /// <param name="lowestStressRatio">Lowest ratio of allowable stress at test over design temperature of all materials of the vessel.</param>
    public static Pressure AsmePneumatic(Pressure mawp, double lowestStressRatio) =>
        mawp * (1.1 * lowestStressRatio);

    /// <summary>Hydrostatic, the larger of 1.25·Pd·fa/ft and 1.43·Pd (EN 13445-5, from memory).</summary>
    /// <param name="design">Design pressure, gauge.</param>
    /// <param name="stressRatio">Design stress at test temperature over that at design temperature, fa/ft.</param>
    public static Pressure EnHydrostatic(Pressure design, double stressRatio) =>
        design * Math.Max(1.25 * stressRatio, 1.43);

    /// <summary>
    /// Hydrostatic, the greater of <c>1.25·PS·f_test/f_design</c> and <c>1.43·PS</c> (2014/68/EU Annex I 7.4, read at second hand), with its
    /// working. The first term is the greatest loading in service, its pressure and temperature taken into account.
    /// </summary>
    /// <param name="largestAllowable">PS, maximum allowable pressure, gauge, above zero.</param>
    /// <param name="allowableAtTest">Allowable stress at test temperature, above zero.</param>
    /// <param name="allowableInService">Allowable stress at design temperature, above zero.</param>
    public static Computed<Pressure> GreaterOf(
        Pressure largestAllowable,
        Pressure allowableAtTest,
        Pressure allowableInService
    )
    {
        var check = new InputCheck()
            .Positive("maximum allowable pressure", largestAllowable.Bar, "bar")
            .Positive("allowable stress at test temperature", allowableAtTest.Megapascals, "MPa")
            .Positive(
                "allowable stress at design temperature",
                allowableInService.Megapascals,
                "MPa"
            );
        return check.Compute(() =>
        {
            var ratio = allowableAtTest / allowableInService;
            var pressure = EnHydrostatic(largestAllowable, ratio);
            var working = Working
                .Of("Proof pressure by rule", "p = max(1.25·PS·f_test/f_design, 1.43·PS)")
                .Input("PS", "maximum allowable pressure", largestAllowable.Bar, "bar")
                .Input("f_test", "allowable stress at test", allowableAtTest.Megapascals, "MPa")
                .Input(
                    "f_design",
                    "allowable stress in service",
                    allowableInService.Megapascals,
                    "MPa"
                )
                .Step("", "1.25 times the loading", largestAllowable.Bar * 1.25 * ratio, "bar")
                .Step("", "1.43 times PS", largestAllowable.Bar * 1.43, "bar")
                .Result("p", "proof pressure, at least", pressure.Bar, "bar")
                .From("2014/68/EU Annex I 7.4 (read at second hand).")
                .Build();
            return (pressure, working);
        });
    }

    /// <summary>Proof factor (1 + BF)/2 for burst factors below 2, else 1.5 (ANSI/AIAA S-080, from memory).</summary>
    /// <param name="burstFactor">Burst factor, above 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not above 1.</exception>
    public static double AiaaProofFactor(double burstFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(burstFactor, 1);
        return burstFactor < 2 ? (1 + burstFactor) / 2 : 1.5;
    }

    /// <summary>Environmental correction: strength at test temperature over strength at the worst operating temperature (from memory).</summary>
    /// <param name="atTest">Strength at test temperature.</param>
    /// <param name="atWorstOperation">Strength at the worst operating temperature, above zero.</param>
    public static double EnvironmentalCorrection(Pressure atTest, Pressure atWorstOperation) =>
        atTest / atWorstOperation;
}
