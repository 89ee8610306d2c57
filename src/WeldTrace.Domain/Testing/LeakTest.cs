using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Testing;

/// <summary>How leaks were looked for.</summary>
public enum LeakMethod
{
    /// <summary>Fall of the pressure, corrected for temperature.</summary>
    PressureDecay,

    /// <summary>Bubbles from the vessel under liquid.</summary>
    ImmersionBubble,

    /// <summary>Signal of a leak detector for a tracer gas, compared with a calibrated leak.</summary>
    TracerGas,
}

/// <summary>A leak test of a vessel with its readings and the computed verdict.</summary>
public sealed class LeakTest : TestRecord
{
    /// <summary>Field that names the gauge.</summary>
    public const string Gauge = nameof(Gauge);

    /// <summary>Field that names the calibrated leak.</summary>
    public const string LeakMark = nameof(LeakMark);

    /// <summary>Field that names the thermometer.</summary>
    public const string Thermometer = nameof(Thermometer);

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

    /// <summary>What was read with a tracer gas.</summary>
    public TracerObservation? Tracer { get; private set; }

    /// <summary>Who read the figures about stored energy; null in tests recorded before they were kept.</summary>
    public HazardAcknowledgement? Acknowledgement { get; private set; }

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
        LeakTestChecks.Cautions(checks, facts);
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

        var computed = LeakEvaluation.Evaluate(seen, facts.Design);
        if (!computed.TryGet(out var decay))
        {
            return LeakEvaluation.Refused(computed.Refusals, "Readings");
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
        LeakTestChecks.Cautions(checks, facts);
        LeakTestChecks.Bubbles(checks, seen, facts.Design.Content);
        var used = checks.Take(
            facts,
            new NeededInstrument(Gauge, InstrumentKind.Pressure, seen.GaugePressure.InUnit(), "bar")
        );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var limit = facts.Design.Content.Pressures.LeakRateLimit;
        var computed = LeakEvaluation.Evaluate(seen, limit);
        if (!computed.TryGet(out var bubbles))
        {
            return LeakEvaluation.Refused(computed.Refusals, nameof(seen.Bubbles));
        }

        return Make(id, facts, remark, used, actor, at)
            .WithBubbles(seen with { Instruments = TestInstruments.Marks(used) }, bubbles, limit);
    }

    /// <summary>Records a tracer-gas test; the verdict is computed from the signals.</summary>
    public static Outcome<LeakTest> RecordTracer(
        Guid id,
        TestFacts facts,
        TracerObservation seen,
        string? remark,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(seen);
        var checks = CheckBeginning(facts, StepKind.LeakTest, remark, actor);
        LeakTestChecks.Cautions(checks, facts);
        TracerChecks.Check(checks, seen, facts.Design.Content.Pressures);
        var used = checks.Take(
            facts,
            new(Gauge, InstrumentKind.Pressure, seen.GaugePressure.InUnit(), "bar"),
            new(LeakMark, InstrumentKind.Leak, null, "Pa·m³/s")
        );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var limit = facts.Design.Content.Pressures.LeakRateLimit;
        var computed = LeakEvaluation.Evaluate(seen, limit);
        return computed.TryGet(out var tracer)
            ? Make(id, facts, remark, used, actor, at)
                .WithTracer(seen with { Instruments = TestInstruments.Marks(used) }, tracer, limit)
            : LeakEvaluation.Refused(computed.Refusals, nameof(seen.SignalOfVessel));
    }

    /// <summary>The computation behind the verdict, for showing how it was worked out.</summary>
    /// <param name="design">Design of the vessel.</param>
    public Engineering.Working Working(VesselDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        var limit = design.Content.Pressures.LeakRateLimit;
        return Decay is { } decay ? LeakEvaluation.Evaluate(decay, design).Working
            : Tracer is { } tracer ? LeakEvaluation.Evaluate(tracer, limit).Working
            : LeakEvaluation.Evaluate(Bubble!, limit).Working;
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
            Acknowledgement = TestHazard.Of(
                facts.Design.Content,
                facts.Design.Content.Pressures.LeakTestPressure,
                true
            )
                is { } hazard
                ? HazardAcknowledgement.Of(hazard, actor, at)
                : null,
        };
        test.SetOrigin(facts.Vessel, facts.Step.Sequence, actor, at);
        test.Note(actor, at, "leak test recorded");
        return test;
    }

    private LeakTest WithDecay(DecayObservation seen, PressureDecay decay, LeakRate limit)
    {
        (Method, Decay) = (LeakMethod.PressureDecay, seen);
        Result = new(decay.Rate, decay.ExpandedUncertainty, decay.DetectionLimit, limit)
        {
            DecidingSeconds = decay.HoldThatDecides?.TotalSeconds is { } seconds
                ? Math.Ceiling(seconds)
                : null,
        };
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

    private LeakTest WithTracer(TracerObservation seen, TracerGasTest tracer, LeakRate limit)
    {
        (Method, Tracer) = (LeakMethod.TracerGas, seen);
        Result = new(tracer.Rate, tracer.ExpandedUncertainty, tracer.DetectionLimit, limit);
        (Verdict, VerdictSentence) = (tracer.Judgement!.Verdict, tracer.Judgement.Sentence);
        return this;
    }
}
