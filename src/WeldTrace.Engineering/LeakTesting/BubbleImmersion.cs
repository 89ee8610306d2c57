using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.LeakTesting;

/// <summary>What was seen in a bubble immersion test.</summary>
/// <param name="BubbleDiameter">Diameter of one bubble, above zero; of the smallest that would be noticed when none was seen.</param>
/// <param name="DiameterUncertainty">Its standard uncertainty, zero or more.</param>
/// <param name="Count">Bubbles counted, zero or more.</param>
/// <param name="Observed">Time of observation, above zero.</param>
/// <param name="AbsolutePressureAtBubble">Air pressure plus the liquid above the bubble, above zero.</param>
public sealed record BubbleObservation(
    Length BubbleDiameter,
    Length DiameterUncertainty,
    int Count,
    TimeSpan Observed,
    Pressure AbsolutePressureAtBubble
);

/// <summary>
/// Leak rate from counted bubbles: <c>q = p_b·(π/6)·d³·N/t</c>. The sensitivity limit is the rate that would have shown one
/// bubble in the time of observation. Usual form; published table of 2 mm bubbles agrees.
/// </summary>
public sealed record BubbleImmersion : IWorked
{
    private const double Gravity = 9.80665;

    private BubbleImmersion(BubbleObservation seen, WrittenLimit? limit)
    {
        var perBubble = seen.AbsolutePressureAtBubble.Pascals * VolumeOf(seen.BubbleDiameter);
        SensitivityLimit = LeakRate.FromSi(perBubble / seen.Observed.TotalSeconds);
        Rate = SensitivityLimit * seen.Count;
        var relative = 3 * (seen.DiameterUncertainty / seen.BubbleDiameter);
        ExpandedUncertainty = LeakRate.FromSi(
            Statistics.StandardUncertainty.Combine(
                SensitivityLimit.SiValue,
                Statistics.StandardUncertainty.CoverageFactor * relative * Rate.SiValue
            )
        );
        var measured = new Measured(Rate.SiValue, "Pa·m³/s", ExpandedUncertainty.SiValue);
        Judgement = limit is null ? null : Comparison.AtMost(measured, limit);
        Working = Show(seen);
    }

    /// <summary>Leak rate at the temperature of the liquid; zero when no bubble was seen.</summary>
    public LeakRate Rate { get; }

    /// <summary>Smallest rate that would have shown one bubble in the time of observation.</summary>
    public LeakRate SensitivityLimit { get; }

    /// <summary>One bubble more or less, combined with twice the uncertainty of the diameter, cubed.</summary>
    public LeakRate ExpandedUncertainty { get; }

    /// <summary>Judgement against the limit; null without one. No bubble passes only when the sensitivity reaches the limit.</summary>
    public Judgement? Judgement { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Evaluates an observation.</summary>
    /// <param name="seen">What was seen.</param>
    /// <param name="limit">Largest allowed rate in a unit of leak rate, or null.</param>
    public static Computed<BubbleImmersion> Evaluate(
        BubbleObservation seen,
        WrittenLimit? limit = null
    )
    {
        ArgumentNullException.ThrowIfNull(seen);
        var check = new InputCheck()
            .Positive("bubble diameter", seen.BubbleDiameter.Millimetres, "mm")
            .NotNegative("uncertainty of the diameter", seen.DiameterUncertainty.Millimetres, "mm")
            .NotNegative("number of bubbles", seen.Count)
            .Positive("time of observation", seen.Observed.TotalSeconds, "s")
            .Positive("pressure at the bubble", seen.AbsolutePressureAtBubble.Pascals, "Pa")
            .LimitOf("limit", limit, Units.Dimension.LeakRate, "in Pa·m³/s, mbar·l/s or atm·cm³/s");
        return check.Compute(() => new BubbleImmersion(seen, limit));
    }

    /// <summary>Absolute pressure at a depth of liquid: p_atm + ρ·g·h.</summary>
    /// <param name="atmosphere">Absolute air pressure.</param>
    /// <param name="depth">Depth of the leak below the surface.</param>
    /// <param name="kilogramsPerCubicMetre">Density of the liquid; 998 for water at 20 °C.</param>
    public static Pressure PressureAtDepth(
        Pressure atmosphere,
        Length depth,
        double kilogramsPerCubicMetre = 998
    ) => atmosphere + Pressure.FromPascals(kilogramsPerCubicMetre * Gravity * depth.Metres);

    /// <summary>Seconds between two bubbles of a leak, rate above zero: p_b·(π/6)·d³/q.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not above zero.</exception>
    public static double SecondsPerBubble(LeakRate rate, Length diameter, Pressure absoluteAtBubble)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(rate.SiValue, nameof(rate));
        return Finite.Require(absoluteAtBubble.Pascals * VolumeOf(diameter) / rate.SiValue);
    }

    private static double VolumeOf(Length diameter) => Math.PI / 6 * Math.Pow(diameter.Metres, 3);

    private Working Show(BubbleObservation seen) =>
        Working
            .Of(
                "Leak rate from counted bubbles",
                "q = p_b·(π/6)·d³·N/t; one bubble in t is the sensitivity limit"
            )
            .Input("d", "bubble diameter", seen.BubbleDiameter.Millimetres, "mm")
            .Input(
                "u_d",
                "standard uncertainty of the diameter",
                seen.DiameterUncertainty.Millimetres,
                "mm"
            )
            .Input("N", "bubbles counted", seen.Count)
            .Input("t", "time of observation", seen.Observed.TotalSeconds, "s")
            .Input(
                "p_b",
                "absolute pressure at the bubble",
                seen.AbsolutePressureAtBubble.Pascals,
                "Pa"
            )
            .Result("q", "leak rate", Rate.SiValue, "Pa·m³/s")
            .Result("U", "expanded uncertainty", ExpandedUncertainty.SiValue, "Pa·m³/s")
            .Result("q_min", "sensitivity limit", SensitivityLimit.SiValue, "Pa·m³/s")
            .From("Usual form; a published table of 2 mm bubbles agrees.")
            .Build();
}
