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
