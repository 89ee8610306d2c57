using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Process;

/// <summary>
/// Pseudo heat index and peak temperature band: <c>Φ = n²/(v·10⁴)</c> with n in rpm and v in in/min, <c>T/Tm = K·Φ^α</c> with both
/// temperatures in °C, K 0.65 to 0.75, α 0.04 to 0.06 (Arbegast and Hartley 1998, read as quoted). An empirical fit for
/// aluminium alloys: it does not see tool size, thickness or backing; it ranks parameter sets.
/// </summary>
public sealed record HeatIndex : IWorked
{
    private static readonly double[] Factors = [0.65, 0.75];
    private static readonly double[] Exponents = [0.04, 0.06];

    private HeatIndex(
        RotationSpeed spindle,
        Speed travel,
        Temperature melting,
        Temperature? solidus
    )
    {
        var rpm = spindle.RevolutionsPerMinute;
        Index = rpm * rpm / (travel.InchesPerMinute * 1e4);
        Melting = melting;
        Solidus = solidus;
        var corners = Factors.SelectMany(k => Exponents.Select(a => Estimate(k, a))).ToArray();
        Low = Capped(corners.Min(t => t.DegreesCelsius));
        Middle = Capped(Estimate(0.70, 0.05).DegreesCelsius);
        High = Capped(corners.Max(t => t.DegreesCelsius));
        Working = Show(spindle, travel);
    }

    /// <summary>The pseudo heat index Φ, in rpm²·min/in divided by 10⁴.</summary>
    public double Index { get; }

    /// <summary>Melting (liquidus) temperature that was used.</summary>
    public Temperature Melting { get; }

    /// <summary>Solidus at which the band is capped, or null.</summary>
    public Temperature? Solidus { get; }

    /// <summary>Lower end of the peak temperature band.</summary>
    public Temperature Low { get; }

    /// <summary>Peak temperature for K = 0.70 and α = 0.05.</summary>
    public Temperature Middle { get; }

    /// <summary>Upper end of the peak temperature band.</summary>
    public Temperature High { get; }

    /// <summary>Whether the upper end reaches the solidus.</summary>
    public bool ReachesSolidus => Solidus is { } limit && High.Kelvin >= limit.Kelvin;

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes index and band.</summary>
    /// <param name="spindle">Spindle speed, above zero.</param>
    /// <param name="travel">Travel speed, above zero.</param>
    /// <param name="melting">Melting (liquidus) temperature of the alloy, above 0 °C.</param>
    /// <param name="solidus">Solidus that caps the band, above 0 °C, or null.</param>
    public static Computed<HeatIndex> Compute(
        RotationSpeed spindle,
        Speed travel,
        Temperature melting,
        Temperature? solidus = null
    )
    {
        var check = new InputCheck()
            .Positive("spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .Positive("travel speed", travel.MillimetresPerMinute, "mm/min")
            .Positive("melting temperature", melting.DegreesCelsius, "°C")
            .Positive("solidus", solidus?.DegreesCelsius ?? 1, "°C");
        return check.Compute(() => new HeatIndex(spindle, travel, melting, solidus));
    }

    /// <summary>Peak temperature for one pair of constants, not capped.</summary>
    /// <param name="k">Factor, published range 0.65 to 0.75.</param>
    /// <param name="alpha">Exponent, published range 0.04 to 0.06.</param>
    public Temperature Estimate(double k, double alpha) =>
        Temperature.FromDegreesCelsius(Melting.DegreesCelsius * k * Math.Pow(Index, alpha));

    private Temperature Capped(double degreesCelsius) =>
        Temperature.FromDegreesCelsius(
            Math.Min(degreesCelsius, Solidus?.DegreesCelsius ?? double.MaxValue)
        );

    private Working Show(RotationSpeed spindle, Speed travel) =>
        Working
            .Of(
                "Heat index and peak temperature",
                "Φ = n²/(v·10⁴), n in rev/min, v in in/min; T = Tm·K·Φ^α in °C, K 0.65..0.75, α 0.04..0.06"
            )
            .Input("n", "spindle speed", spindle.RevolutionsPerMinute, "rev/min")
            .Input("v", "travel speed", travel.InchesPerMinute, "in/min")
            .Input("Tm", "melting temperature", Melting.DegreesCelsius, "°C")
            .OptionalInput("", "solidus, caps the band", Solidus?.DegreesCelsius, "°C")
            .Step("Φ", "pseudo heat index", Index)
            .Result("T", "peak temperature, low end", Low.DegreesCelsius, "°C")
            .Result("T", "peak temperature, middle", Middle.DegreesCelsius, "°C")
            .Result("T", "peak temperature, high end", High.DegreesCelsius, "°C")
            .From(
                "Arbegast and Hartley 1998 (read as quoted); empirical, ranks parameter sets only."
            )
            .Validity(
                Validity.When(
                    !ReachesSolidus,
                    "The band stays below the solidus.",
                    "the estimate reaches the solidus; incipient melting is possible."
                )
            )
            .Build();
}
