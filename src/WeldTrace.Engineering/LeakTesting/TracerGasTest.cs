using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.LeakTesting;

/// <summary>A leak detector's readings with a calibrated leak, without any leak, and on the vessel; all signals in one unit.</summary>
public sealed record TracerReadings
{
    /// <summary>Rate of the calibrated leak at its test temperature, above zero.</summary>
    public required LeakRate CalibratedLeak { get; init; }

    /// <summary>Standard uncertainty of the calibrated leak, zero or more.</summary>
    public required LeakRate CalibratedLeakUncertainty { get; init; }

    /// <summary>Signal with the calibrated leak open, above the background.</summary>
    public required double SignalOfCalibratedLeak { get; init; }

    /// <summary>Signal without any leak, zero or more.</summary>
    public required double Background { get; init; }

    /// <summary>Signal on the vessel, zero or more.</summary>
    public required double SignalOfVessel { get; init; }

    /// <summary>Standard uncertainty of one signal: its noise and drift, above zero.</summary>
    public required double SignalUncertainty { get; init; }

    /// <summary>Share of tracer gas in the test gas, above 0 and at most 1.</summary>
    public required double Concentration { get; init; }

    /// <summary>Standard uncertainty of the share, zero or more.</summary>
    public double ConcentrationUncertainty { get; init; }
}

/// <summary>
/// Leak rate by tracer gas: <c>q = q_cal·(S − S_b)/(S_cal − S_b)/c</c>. Standard uncertainty by first-order propagation (GUM); smallest
/// leak seen 3.29·u0 with u0 at zero leak (style of ISO 11929, from memory). Comparison with a calibrated leak as in ISO 20485
/// (from memory).
/// </summary>
public sealed record TracerGasTest : IWorked
{
    private TracerGasTest(TracerReadings readings, WrittenLimit? limit)
    {
        Readings = readings;
        var span = readings.SignalOfCalibratedLeak - readings.Background;
        var net = readings.SignalOfVessel - readings.Background;
        var perSignal = readings.CalibratedLeak.SiValue / span / readings.Concentration;
        Rate = LeakRate.FromSi(perSignal * net);
        var noise = readings.SignalUncertainty;
        var ofSignals = perSignal * Combine(noise, noise * (1 - (net / span)), noise * net / span);
        var uncertainty = Combine(
            ofSignals,
            Rate.SiValue
                * readings.CalibratedLeakUncertainty.SiValue
                / readings.CalibratedLeak.SiValue,
            Rate.SiValue * readings.ConcentrationUncertainty / readings.Concentration
        );
        ExpandedUncertainty = LeakRate.FromSi(CoverageFactor * uncertainty);
        DetectionLimit = LeakRate.FromSi(
            2 * DecaySensitivity.OneSided95 * perSignal * Math.Sqrt(2) * noise
        );
        Judgement = limit is null ? null : Judge(limit);
        Working = Show();
    }

    /// <summary>What was read.</summary>
    public TracerReadings Readings { get; }

    /// <summary>Leak rate of the test gas; negative when the signal lies below the background.</summary>
    public LeakRate Rate { get; }

    /// <summary>Expanded uncertainty of <see cref="Rate"/>, coverage factor 2.</summary>
    public LeakRate ExpandedUncertainty { get; }

    /// <summary>Smallest leak that the test would see with 95 % probability.</summary>
    public LeakRate DetectionLimit { get; }

    /// <summary>Judgement against the limit; null without one.</summary>
    public Judgement? Judgement { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Evaluates the readings.</summary>
    /// <param name="readings">What was read.</param>
    /// <param name="limit">Largest allowed rate in a unit of leak rate, or null.</param>
    public static Computed<TracerGasTest> Evaluate(
        TracerReadings readings,
        WrittenLimit? limit = null
    )
    {
        ArgumentNullException.ThrowIfNull(readings);
        var check = new InputCheck()
            .Positive("calibrated leak", readings.CalibratedLeak.SiValue, "Pa·m³/s")
            .NotNegative(
                "uncertainty of the calibrated leak",
                readings.CalibratedLeakUncertainty.SiValue,
                "Pa·m³/s"
            )
            .NotNegative("background", readings.Background)
            .NotNegative("signal of the vessel", readings.SignalOfVessel)
            .Positive("uncertainty of a signal", readings.SignalUncertainty)
            .Positive("share of tracer gas", readings.Concentration)
            .Between("share of tracer gas", readings.Concentration, 0, 1)
            .NotNegative("uncertainty of the share", readings.ConcentrationUncertainty)
            .Require(
                readings.SignalOfCalibratedLeak
                    > readings.Background + (5 * readings.SignalUncertainty),
                RefusalReason.OutOfRange,
                "signal of the calibrated leak",
                "It doesn't stand clear of the background by five times the uncertainty of a signal, so nothing can be measured by it.",
                "Check that the calibrated leak is open, or let the background fall."
            )
            .LimitOf("limit", limit, Units.Dimension.LeakRate, "in Pa·m³/s, mbar·l/s or atm·cm³/s");
        return check.Compute(() => new TracerGasTest(readings, limit));
    }

    /// <summary>A signal below the background is an error of at least its size; a pass needs a test that would have seen a leak of the limit.</summary>
    private Judgement Judge(WrittenLimit limit)
    {
        var judgement = Comparison.AtMost(
            new Measured(Rate.SiValue, "Pa·m³/s", ExpandedUncertainty.SiValue).NotBelowZero(),
            limit
        );
        var smallest = new Measured(Math.Max(DetectionLimit.SiValue, -2 * Rate.SiValue), "Pa·m³/s");
        var isBlind = Comparison.AtMost(smallest, limit).Verdict != Verdict.Pass;
        return judgement.Verdict == Verdict.Pass && isBlind
            ? judgement with
            {
                Verdict = Verdict.Undecided,
                Sentence =
                    $"The test would only have seen a leak of {Figures.Format(smallest.In(limit.Unit).Value, 3)} {limit.Unit}, more than the limit of {limit}: raise the share of tracer gas, or let the background fall.",
            }
            : judgement;
    }

    private Working Show() =>
        Working
            .Of("Leak rate by tracer gas", "q = q_cal·(S − S_b)/(S_cal − S_b)/c")
            .Input("q_cal", "calibrated leak", Readings.CalibratedLeak.SiValue, "Pa·m³/s")
            .Input(
                "u_cal",
                "its standard uncertainty",
                Readings.CalibratedLeakUncertainty.SiValue,
                "Pa·m³/s"
            )
            .Input("S_cal", "signal with the calibrated leak", Readings.SignalOfCalibratedLeak)
            .Input("S_b", "background", Readings.Background)
            .Input("S", "signal of the vessel", Readings.SignalOfVessel)
            .Input("u_S", "standard uncertainty of a signal", Readings.SignalUncertainty)
            .Input("c", "share of tracer gas", Readings.Concentration)
            .Input("u_c", "its standard uncertainty", Readings.ConcentrationUncertainty)
            .Result("q", "leak rate of the test gas", Rate.SiValue, "Pa·m³/s")
            .Result("U", "expanded uncertainty, k = 2", ExpandedUncertainty.SiValue, "Pa·m³/s")
            .Result("q_min", "smallest leak seen", DetectionLimit.SiValue, "Pa·m³/s")
            .From(
                "Comparison with a calibrated leak (ISO 20485, from memory); first-order propagation of uncertainty (GUM)."
            )
            .Build();
}
