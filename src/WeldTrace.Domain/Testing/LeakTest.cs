using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Testing;

/// <summary>How leaks were looked for.</summary>
public enum LeakMethod
{
    /// <summary>Fall of the pressure, corrected for temperature.</summary>
    PressureDecay,

    /// <summary>Bubbles from the vessel under liquid.</summary>
    ImmersionBubble,
}

/// <summary>One reading of a pressure-decay test, with the digits as written down.</summary>
/// <param name="Seconds">Time since the first reading.</param>
/// <param name="GaugePressure">Gauge pressure in bar.</param>
/// <param name="GasTemperature">Temperature of the gas, or of the wall in its place, in °C.</param>
public sealed record LeakReading(int Seconds, Measured GaugePressure, Measured GasTemperature);

/// <summary>What was read in a pressure-decay test.</summary>
/// <param name="Readings">Two or more readings in the order of time.</param>
/// <param name="AtmosphericPressure">Barometer in mbar.</param>
/// <param name="GaugeUncertainty">Standard uncertainty of a pressure reading, in mbar.</param>
/// <param name="TemperatureUncertainty">Standard uncertainty of a temperature reading, in K.</param>
/// <param name="VolumeUncertaintyPercent">Standard uncertainty of the test volume, in % of it.</param>
/// <param name="Instruments">Marks of gauge and thermometer; put in from the register.</param>
public sealed record DecayObservation(
    IReadOnlyList<LeakReading> Readings,
    Measured AtmosphericPressure,
    Measured GaugeUncertainty,
    Measured TemperatureUncertainty,
    Measured VolumeUncertaintyPercent,
    string Instruments
);

/// <summary>What was seen in an immersion bubble test.</summary>
/// <param name="GaugePressure">Gauge pressure in bar.</param>
/// <param name="Liquid">Liquid.</param>
/// <param name="DepthOfLiquid">Depth of the observed seam below the surface, in mm.</param>
/// <param name="AtmosphericPressure">Barometer in mbar.</param>
/// <param name="ObservedSeconds">Time of observation.</param>
/// <param name="Bubbles">Bubbles counted; 0 when none.</param>
/// <param name="BubbleDiameter">Diameter of the bubbles, or the smallest that would have been seen, in mm.</param>
/// <param name="Places">Where bubbles rose; may be empty when there were none.</param>
/// <param name="Instruments">Mark of the gauge; put in from the register.</param>
public sealed record BubbleTest(
    Measured GaugePressure,
    string Liquid,
    Measured DepthOfLiquid,
    Measured AtmosphericPressure,
    int ObservedSeconds,
    int Bubbles,
    Measured BubbleDiameter,
    string Places,
    string Instruments
);

/// <summary>What was computed from a leak test, referred to 20 °C.</summary>
/// <param name="Rate">Leak rate.</param>
/// <param name="ExpandedUncertainty">Expanded uncertainty, k = 2.</param>
/// <param name="Smallest">Smallest rate that this test could have shown.</param>
/// <param name="Limit">Greatest permitted rate.</param>
public sealed record LeakResult(
    LeakRate Rate,
    LeakRate ExpandedUncertainty,
    LeakRate Smallest,
    LeakRate Limit
);

/// <summary>A leak test of a vessel with its readings and the computed verdict.</summary>
public sealed class LeakTest : TestRecord
{
    /// <summary>Field that names the gauge.</summary>
    public const string Gauge = nameof(Gauge);

    /// <summary>Field that names the thermometer.</summary>
    public const string Thermometer = nameof(Thermometer);

    private const string RateUnit = "Pa·m³/s";
    private static readonly Temperature Reference = Temperature.FromDegreesCelsius(20);

    private LeakTest(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "leak-test";

    /// <inheritdoc/>
    public override string Label => $"{VesselSerial} leak test, step {StepSequence}";

    /// <summary>Method.</summary>
    public LeakMethod Method { get; private set; }

    /// <summary>Readings of a pressure-decay test.</summary>
    public DecayObservation? Decay { get; private set; }

    /// <summary>Observation of an immersion bubble test.</summary>
    public BubbleTest? Bubble { get; private set; }

    /// <summary>What was computed.</summary>
    public LeakResult Result { get; private set; } = null!;

    /// <inheritdoc/>
    protected override ExaminationMethod Examination => ExaminationMethod.Leak;

    /// <inheritdoc/>
    protected override FindingOrigin Origin => FindingOrigin.LeakTest;

    /// <summary>Records a pressure-decay test; the verdict is computed from the readings.</summary>
    public static Outcome<LeakTest> RecordDecay(
        Guid id,
        TestFacts facts,
        DecayObservation seen,
        string? remark,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(seen);
        var checks = CheckBeginning(facts, StepKind.LeakTest, remark, actor);
        LeakTestChecks.Decay(checks, seen, facts.Design.Content.Pressures);
        var used = checks.Take(
            facts,
            new(
                Gauge,
                InstrumentKind.Pressure,
                seen.Readings.Count > 0 ? seen.Readings.Max(r => r.GaugePressure.InUnit()) : null,
                "bar"
            ),
            new(Thermometer, InstrumentKind.Temperature, null, "°C")
        );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var computed = Evaluate(seen, facts.Design);
        if (!computed.TryGet(out var decay))
        {
            return computed
                .Refusals.Select(r => new Refusal(
                    "computation",
                    $"{r.Where}: {r.What} {r.Mend}",
                    "Readings"
                ))
                .ToList();
        }

        var limit = facts.Design.Content.Pressures.LeakRateLimit;
        return Make(id, facts, remark, used, actor, at)
            .WithDecay(seen with { Instruments = TestInstruments.Marks(used) }, decay, limit);
    }

    /// <summary>Records an immersion bubble test; the verdict is computed from what was counted.</summary>
    public static Outcome<LeakTest> RecordBubbles(
        Guid id,
        TestFacts facts,
        BubbleTest seen,
        string? remark,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(seen);
        var checks = CheckBeginning(facts, StepKind.LeakTest, remark, actor);
        LeakTestChecks.Bubbles(checks, seen, facts.Design.Content.Pressures);
        var used = checks.Take(
            facts,
            new NeededInstrument(Gauge, InstrumentKind.Pressure, seen.GaugePressure.InUnit(), "bar")
        );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var limit = facts.Design.Content.Pressures.LeakRateLimit;
        var computed = Evaluate(seen, limit);
        if (!computed.TryGet(out var bubbles))
        {
            return computed
                .Refusals.Select(r => new Refusal(
                    "computation",
                    $"{r.Where}: {r.What} {r.Mend}",
                    "Bubbles"
                ))
                .ToList();
        }

        return Make(id, facts, remark, used, actor, at)
            .WithBubbles(seen with { Instruments = TestInstruments.Marks(used) }, bubbles, limit);
    }

    /// <summary>The computation behind the verdict, for showing how it was worked out.</summary>
    /// <param name="design">Design of the vessel.</param>
    public Engineering.Working Working(VesselDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return Decay is { } decay
            ? Evaluate(decay, design).Working
            : Evaluate(Bubble!, design.Content.Pressures.LeakRateLimit).Working;
    }

    private static Engineering.Computed<PressureDecay> Evaluate(
        DecayObservation seen,
        VesselDesign design
    )
    {
        var atmosphere = Pressure.FromMillibar(seen.AtmosphericPressure.InUnit());
        var volume = design.Content.Volume;
        return PressureDecay.Evaluate(
            new DecayTest
            {
                Volume = volume,
                Readings =
                [
                    .. seen.Readings.Select(r => new DecayReading(
                        TimeSpan.FromSeconds(r.Seconds),
                        atmosphere + Pressure.FromBar(r.GaugePressure.InUnit()),
                        Temperature.FromDegreesCelsius(r.GasTemperature.InUnit())
                    )),
                ],
                Uncertainty = new DecayUncertainty(
                    volume * (seen.VolumeUncertaintyPercent.InUnit() / 100),
                    Pressure.FromMillibar(seen.GaugeUncertainty.InUnit()),
                    seen.TemperatureUncertainty.InUnit(),
                    TimeSpan.FromSeconds(1)
                ),
                Reference = Reference,
                Method = seen.Readings.Count > 2 ? DecayMethod.LeastSquares : DecayMethod.TwoPoint,
                Limit = WrittenLimit.Exact(
                    design.Content.Pressures.LeakRateLimit.SiValue,
                    RateUnit
                ),
            }
        );
    }

    private static Engineering.Computed<BubbleImmersion> Evaluate(BubbleTest seen, LeakRate limit)
    {
        var diameter = Length.FromMillimetres(seen.BubbleDiameter.InUnit());
        return BubbleImmersion.Evaluate(
            new BubbleObservation(
                diameter,
                diameter * 0.1,
                seen.Bubbles,
                TimeSpan.FromSeconds(seen.ObservedSeconds),
                BubbleImmersion.PressureAtDepth(
                    Pressure.FromMillibar(seen.AtmosphericPressure.InUnit()),
                    Length.FromMillimetres(seen.DepthOfLiquid.InUnit())
                )
            ),
            WrittenLimit.Exact(limit.SiValue, RateUnit)
        );
    }

    private static LeakTest Make(
        Guid id,
        TestFacts facts,
        string? remark,
        IReadOnlyList<UsedInstrument> used,
        Actor actor,
        DateTimeOffset at
    )
    {
        var test = new LeakTest(id)
        {
            Instruments = used,
            Remark = string.IsNullOrWhiteSpace(remark) ? null : remark.Trim(),
        };
        test.SetOrigin(facts.Vessel, facts.Step.Sequence, actor, at);
        test.Note(actor, at, "leak test recorded");
        return test;
    }

    private LeakTest WithDecay(DecayObservation seen, PressureDecay decay, LeakRate limit)
    {
        (Method, Decay) = (LeakMethod.PressureDecay, seen);
        Result = new(decay.Rate, decay.ExpandedUncertainty, decay.DetectionLimit, limit);
        (Verdict, VerdictSentence) = (decay.Judgement!.Verdict, decay.Judgement.Sentence);
        return this;
    }

    private LeakTest WithBubbles(BubbleTest seen, BubbleImmersion bubbles, LeakRate limit)
    {
        (Method, Bubble) = (LeakMethod.ImmersionBubble, seen);
        Result = new(bubbles.Rate, bubbles.ExpandedUncertainty, bubbles.SensitivityLimit, limit);
        (Verdict, VerdictSentence) = (bubbles.Judgement!.Verdict, bubbles.Judgement.Sentence);
        return this;
    }
}
