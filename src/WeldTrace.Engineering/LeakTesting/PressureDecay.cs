using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.LeakTesting;

/// <summary>
/// Leak rate from a fall of pressure, compensated for temperature: <c>q = V·Tref·(p1/T1 − p2/T2)/Δt</c>, absolute pressures
/// and kelvin (form of 40 CFR 1065.644), or from the least-squares slope of <c>p·Tref/T</c>. Standard uncertainty by
/// first-order propagation (GUM). Decision threshold 1.645·u0 and detection limit 3.29·u0 with u0 at zero leak
/// (α = β = 5 %, in the style of ISO 11929).
/// </summary>
public sealed record PressureDecay : IWorked
{
    private const double LongestDays = 30;

    internal PressureDecay(DecayTest test, DecayEstimate estimate)
    {
        Test = test;
        Rate = LeakRate.FromSi(estimate.Rate);
        UncompensatedRate = LeakRate.FromSi(estimate.Uncompensated);
        CorrectedFinalPressure = Pressure.FromPascals(estimate.CorrectedFinalPressure);
        StandardUncertainty = LeakRate.FromSi(estimate.Uncertainty);
        ZeroLeakUncertainty = LeakRate.FromSi(estimate.UncertaintyAtZero);
        FitUncertainty = estimate.FitUncertainty is { } fit ? LeakRate.FromSi(fit) : null;
        Reference = Temperature.FromKelvin(estimate.Reference);
        Duration = test.Readings[^1].Time - test.Readings[0].Time;
        Judgement = test.Limit is { } limit ? DecayJudgement.Of(this, limit) : null;
        Working = DecayWorking.Show(this);
    }

    /// <summary>The test that was evaluated.</summary>
    public DecayTest Test { get; }

    /// <summary>Leak rate at <see cref="Reference"/>; negative for an apparent gain of gas.</summary>
    public LeakRate Rate { get; }

    /// <summary>What the rate would be without regard to temperature, from first and last reading.</summary>
    public LeakRate UncompensatedRate { get; }

    /// <summary>Last pressure brought to the temperature of the first reading.</summary>
    public Pressure CorrectedFinalPressure { get; }

    /// <summary>Combined standard uncertainty of <see cref="Rate"/>.</summary>
    public LeakRate StandardUncertainty { get; }

    /// <summary>Expanded uncertainty of <see cref="Rate"/>, coverage factor 2.</summary>
    public LeakRate ExpandedUncertainty =>
        StandardUncertainty * Statistics.StandardUncertainty.CoverageFactor;

    /// <summary>Standard uncertainty that a tight vessel would show in this test.</summary>
    public LeakRate ZeroLeakUncertainty { get; }

    /// <summary>Standard uncertainty from the scatter about the fitted line; null for two points.</summary>
    public LeakRate? FitUncertainty { get; }

    /// <summary>Rate from which on a leak is taken as seen (one-sided 95 %).</summary>
    public LeakRate DecisionThreshold => ZeroLeakUncertainty * DecaySensitivity.OneSided95;

    /// <summary>Smallest leak that the test would see with 95 % probability.</summary>
    public LeakRate DetectionLimit => ZeroLeakUncertainty * (2 * DecaySensitivity.OneSided95);

    /// <summary>True when the gas seems to have grown by more than the decision threshold: look for the error.</summary>
    public bool IsApparentGain => Rate.SiValue < -DecisionThreshold.SiValue;

    /// <summary>Temperature to which the rates refer.</summary>
    public Temperature Reference { get; }

    /// <summary>Time between first and last reading.</summary>
    public TimeSpan Duration { get; }

    /// <summary>Judgement against the limit; null when the test has none.</summary>
    public Judgement? Judgement { get; }

    /// <summary>
    /// Hold time after which the same readings would decide: the rate's distance from the limit must exceed the expanded uncertainty, and
    /// the detection limit must not exceed the limit; both shrink as one over the time. Null when the test is decided, has no
    /// limit, or no time would decide it within 30 days.
    /// </summary>
    public TimeSpan? HoldThatDecides
    {
        get
        {
            if (Judgement?.Verdict != Verdict.Undecided || Test.Limit is not { } limit)
            {
                return null;
            }

            var allowed = new Measured(limit.Value, limit.Unit).In("Pa·m³/s").Value;
            var rate = Math.Max(Rate.SiValue, 0);
            var factor = Math.Max(
                ExpandedUncertainty.SiValue / Math.Abs(allowed - rate),
                rate > allowed ? 0 : DetectionLimit.SiValue / allowed
            );
            return Duration.TotalDays * factor < LongestDays
                ? Duration * Math.Max(factor, 1)
                : null;
        }
    }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Evaluates a test; refused with every reason that <see cref="DecayTest.Check"/> finds.</summary>
    public static Computed<PressureDecay> Evaluate(DecayTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        return InputCheck
            .From(test.Check())
            .Compute(() => new PressureDecay(test, DecayEstimate.Of(test)));
    }
}
