using WeldTrace.Engineering.Quantities;
using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.LeakTesting;

/// <summary>
/// What a pressure-decay test can see: <c>u0 = V/Δt·√(2·u_p² + 2·(p·u_T/T)²)</c>, decision threshold 1.645·u0, detection
/// limit 3.29·u0, hold time for a wanted limit <c>Δt = 3.29·V·√(…)/q</c>. GUM, ISO 11929 style (from memory).
/// </summary>
public sealed record DecaySensitivity : IWorked
{
    /// <summary>One-sided 95 % quantile of the normal distribution, rounded as usual.</summary>
    public const double OneSided95 = 1.645;

    private readonly double _uncertaintyTimesSeconds;

    private DecaySensitivity(double uncertaintyTimesSeconds, double seconds, WorkingBuilder working)
    {
        _uncertaintyTimesSeconds = uncertaintyTimesSeconds;
        StandardUncertainty = LeakRate.FromSi(uncertaintyTimesSeconds / seconds);
        Working = working
            .Result(
                "u0",
                "standard uncertainty at zero leak",
                StandardUncertainty.SiValue,
                "Pa·m³/s"
            )
            .Result("", "decision threshold", DecisionThreshold.SiValue, "Pa·m³/s")
            .Result("", "detection limit", DetectionLimit.SiValue, "Pa·m³/s")
            .From(
                "First-order propagation (GUM), decision threshold and detection limit in the style of ISO 11929 (from memory)."
            )
            .Build();
    }

    /// <summary>Standard uncertainty of the rate at zero leak.</summary>
    public LeakRate StandardUncertainty { get; }

    /// <summary>Rate from which on a leak is taken as seen (one-sided 95 %).</summary>
    public LeakRate DecisionThreshold => StandardUncertainty * OneSided95;

    /// <summary>Smallest leak that is seen with 95 % probability.</summary>
    public LeakRate DetectionLimit => StandardUncertainty * (2 * OneSided95);

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Sensitivity of a test that is planned.</summary>
    /// <param name="volume">Test volume, above zero.</param>
    /// <param name="absolutePressure">Test pressure, absolute, above zero.</param>
    /// <param name="gas">Gas temperature, above zero kelvin.</param>
    /// <param name="hold">Hold time, above zero.</param>
    /// <param name="uncertainty">Standard uncertainties of the readings.</param>
    public static Computed<DecaySensitivity> Compute(
        Volume volume,
        Pressure absolutePressure,
        Temperature gas,
        TimeSpan hold,
        DecayUncertainty uncertainty
    )
    {
        ArgumentNullException.ThrowIfNull(uncertainty);
        var (pressure, kelvin) = (uncertainty.Pressure.Pascals, uncertainty.TemperatureKelvin);
        var check = new InputCheck()
            .Positive("test volume", volume.Litres, "l")
            .Positive("absolute pressure", absolutePressure.Bar, "bar")
            .Positive("gas temperature", gas.Kelvin, "K")
            .Positive("hold time", hold.TotalSeconds, "s")
            .Positive("uncertainty of the pressure", pressure, "Pa")
            .NotNegative("uncertainty of the temperature", kelvin, "K");
        return check.Compute(() =>
            new DecaySensitivity(
                UncertaintyAtZero(
                    volume.CubicMetres,
                    absolutePressure.Pascals,
                    gas.Kelvin,
                    1,
                    pressure,
                    kelvin
                ),
                hold.TotalSeconds,
                Begin(volume, absolutePressure, gas, hold, uncertainty)
            )
        );
    }

    /// <summary>Hold time after which a leak of the given rate, above zero, is seen with 95 % probability.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not above zero.</exception>
    public TimeSpan HoldTimeFor(LeakRate wanted)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wanted.SiValue, nameof(wanted));
        var seconds = 2 * OneSided95 * _uncertaintyTimesSeconds / wanted.SiValue;
        return seconds < TimeSpan.MaxValue.TotalSeconds
            ? TimeSpan.FromSeconds(seconds)
            : TimeSpan.MaxValue;
    }

    /// <summary><see cref="HoldTimeFor"/> with its working.</summary>
    /// <param name="wanted">Rate that is to be seen, above zero.</param>
    public Computed<TimeSpan> PlanHold(LeakRate wanted) =>
        new InputCheck()
            .Positive("wanted leak rate", wanted.SiValue, "Pa·m³/s")
            .Compute(() =>
            {
                var hold = HoldTimeFor(wanted);
                return (
                    hold,
                    Working
                        .Of("Hold time for a wanted sensitivity", "Δt = 3.29·u0·t/q")
                        .Input("q", "leak rate to be seen", wanted.SiValue, "Pa·m³/s")
                        .Step(
                            "u0·t",
                            "uncertainty at zero leak times hold",
                            _uncertaintyTimesSeconds,
                            "Pa·m³"
                        )
                        .Result("Δt", "least hold", hold.TotalSeconds, "s")
                        .From(
                            "Detection limit in the style of ISO 11929 (from memory), solved for the time."
                        )
                        .Build()
                );
            });

    internal static double UncertaintyAtZero(
        double volume,
        double pressure,
        double kelvin,
        double seconds,
        double pressureUncertainty,
        double temperatureUncertainty
    ) =>
        volume
        / seconds
        * Math.Sqrt(2)
        * Combine(pressureUncertainty, pressure * temperatureUncertainty / kelvin);

    private static WorkingBuilder Begin(
        Volume volume,
        Pressure absolutePressure,
        Temperature gas,
        TimeSpan hold,
        DecayUncertainty uncertainty
    ) =>
        Working
            .Of(
                "Sensitivity of a pressure-decay test",
                "u0 = V/Δt·√(2·u_p² + 2·(p·u_T/T)²); threshold = 1.645·u0; limit = 3.29·u0"
            )
            .Input("V", "test volume", volume.Litres, "l")
            .Input("p", "absolute pressure", absolutePressure.Bar, "bar")
            .Input("T", "gas temperature", gas.Kelvin, "K")
            .Input("Δt", "hold time", hold.TotalSeconds, "s")
            .Input("u_p", "standard uncertainty of a pressure", uncertainty.Pressure.Pascals, "Pa")
            .Input(
                "u_T",
                "standard uncertainty of a temperature",
                uncertainty.TemperatureKelvin,
                "K"
            );
}
