using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Domain.Testing;

/// <summary>A staged pressure test against the ladder of the design: holds, return to zero with dimensions, proof.</summary>
public sealed partial class PressureTest : TestRecord, ISampleTest
{
    /// <summary>Field that names what the dimension is measured with.</summary>
    public const string DimensionInstrument = nameof(DimensionInstrument);

    private PressureTest(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "pressure-test";

    /// <inheritdoc/>
    public override string Label => $"{VesselSerial} pressure test, step {StepSequence}";

    /// <summary>Test medium, as the design says.</summary>
    public string Medium { get; private set; } = "";

    /// <summary>How it is set up.</summary>
    public PressureSetUp SetUp { get; private set; } = null!;

    /// <summary>Stages done so far, in order.</summary>
    public IReadOnlyList<StageResult> Stages { get; private set; } = [];

    /// <summary>Steps out of the plan with what was decided about each; null when there was none.</summary>
    public IReadOnlyList<PlanDeparture>? Departures { get; private set; }

    /// <summary>The step out of the plan that waits for a decision; null when none does.</summary>
    public PlanDeparture? OpenDeparture =>
        IsSealed || Verdict is not null
            ? null
            : Departures?.FirstOrDefault(d => d.Decision is null);

    /// <summary>Whether the vessel burst, as a sample does.</summary>
    public bool HasBurst => Stages.Any(s => s.Reading.Burst is not null);

    /// <inheritdoc/>
    protected override ExaminationMethod Examination => ExaminationMethod.Pressure;

    /// <inheritdoc/>
    protected override FindingOrigin Origin => FindingOrigin.PressureTest;

    /// <summary>Begins a test; its stages follow one by one.</summary>
    public static Outcome<PressureTest> Begin(
        Guid id,
        TestFacts facts,
        PressureSetUp setUp,
        string? remark,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(setUp);
        var checks = CheckBeginning(facts, StepKind.PressureTest, remark, actor);
        CheckSetUp(checks, setUp);
        var plan = facts.Design.Content.Pressures;
        CheckSample(checks, setUp, facts);
        checks.That(
            setUp.ToBurst != true || plan.BurstStage is not null,
            "burst",
            $"{facts.Design.Label} has no burst stage; have it drawn, or test without burst.",
            nameof(setUp.ToBurst)
        );
        var used = checks.Take(facts, Needed(setUp, plan));
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var test = new PressureTest(id)
        {
            Medium = plan.Medium,
            SetUp = setUp with
            {
                Gauge = used[0].Mark,
                Thermometer = used[1].Mark,
                Acknowledgement = Acknowledge(facts.Design.Content, setUp, actor, at),
            },
            Instruments = used,
            Remark = string.IsNullOrWhiteSpace(remark) ? null : remark.Trim(),
        };
        test.SetOrigin(facts.Vessel, facts.Step.Sequence, actor, at);
        test.Note(actor, at, "pressure test begun");
        if (facts.Step.State == Vessels.StepState.Ready)
        {
            facts.Vessel.BeginStep(facts.Step.Sequence, actor, at);
        }

        return test;
    }

    /// <summary>The stages of this test: those of every vessel, and the burst for a sample.</summary>
    /// <param name="plan">Pressures of the design.</param>
    public IReadOnlyList<PressureStage> Ladder(PressurePlan plan) => Ladder(plan, SetUp);

    /// <summary>The stage that comes next; null when the ladder is done or a stage has failed.</summary>
    public PressureStage? NextStage(PressurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Verdict is not null ? null : Ladder(plan).ElementAtOrDefault(Stages.Count);
    }

    /// <summary>
    /// Records the next stage of the ladder. A failed stage ends the test; a step out of the plan makes it stand until somebody has decided.
    /// </summary>
    /// <param name="stageNumber">Number of the stage, from 1, as the person saw it: two people can't record the same one.</param>
    /// <param name="reading">What was read.</param>
    /// <param name="design">Design with the ladder.</param>
    /// <param name="actor">Who reads.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome RecordStage(
        int stageNumber,
        StageReading reading,
        VesselDesign design,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(actor);
        var plan = design.Content.Pressures;
        var checks = new Checks()
            .Role(actor, People.Role.Inspector)
            .That(!IsSealed, "state", "The test is signed or withdrawn already.")
            .That(
                OpenDeparture is null,
                "departure",
                $"The test stands: {OpenDeparture?.Sentence} An engineer or the quality manager decides first."
            )
            .That(stageNumber == Stages.Count + 1, "stage", OutOfTurn(stageNumber));
        if (NextStage(plan) is not { } stage)
        {
            return checks
                .That(false, "stage", "The ladder is done, or a stage has failed; sign the test.")
                .ToOutcome();
        }

        if (checks.AllHold)
        {
            StageEvaluation.Check(checks, stage, reading, SetUp, design.Content);
            CheckRange(checks, reading);
        }

        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        JudgeAndKeep(stageNumber, stage, reading, plan, actor, at);
        return Outcome.Accepted;
    }

    /// <summary>The computations behind a recorded stage, for showing how it was worked out.</summary>
    /// <param name="result">One of <see cref="Stages"/>.</param>
    /// <param name="design">Design with the ladder.</param>
    public IReadOnlyList<Working> Workings(StageResult result, VesselDesign design)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(design);
        return StageEvaluation
            .Judge(result.Stage, result.Reading, SetUp, design.Content.Pressures)
            .Workings;
    }

    /// <summary>What stayed at each place that was measured before and after; empty for a stage at which nothing was.</summary>
    /// <param name="result">One of <see cref="Stages"/>.</param>
    /// <param name="plan">Pressures of the design.</param>
    public IReadOnlyList<PlaceResult> Places(StageResult result, PressurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(plan);
        return SetEvaluation.Judge(result.Reading, SetUp, plan);
    }

    /// <inheritdoc/>
    private protected override void Follow(Vessels.Vessel vessel, Actor actor, DateTimeOffset at)
    {
        if (HasBurst)
        {
            vessel.Expend(actor, at, VerdictSentence);
        }
    }

    private string OutOfTurn(int stageNumber) =>
        Stages.ElementAtOrDefault(stageNumber - 1) is { } done
            ? $"Stage {stageNumber} was recorded already by {done.By}: {done.Sentence} What you typed was not taken and still stands in the form; go on with stage {Stages.Count + 1}."
            : $"Stage {Stages.Count + 1} comes next; no stage is skipped.";

    private static IReadOnlyList<PressureStage> Ladder(PressurePlan plan, PressureSetUp setUp) =>
        setUp.ToBurst == true ? plan.Stages : plan.OrdinaryStages;

    private void JudgeAndKeep(
        int stageNumber,
        PressureStage stage,
        StageReading reading,
        PressurePlan plan,
        Actor actor,
        DateTimeOffset at
    )
    {
        var (verdict, sentence) = JudgeReading(stage, reading, plan);
        var higher = Ladder(plan)
            .Skip(stageNumber)
            .FirstOrDefault(s => s.FactorOnMeop > stage.FactorOnMeop);
        var departures =
            verdict == Engineering.Conformity.Verdict.Fail
                ? []
                : PlanDeparture.Of(stage, higher, reading, plan);
        if (departures.Count > 0)
        {
            Stand(stageNumber, departures, reading, actor, at);
        }
        else
        {
            Take(stage, reading, verdict, sentence, plan, actor, at);
        }
    }

    private (Verdict Verdict, string Sentence) JudgeReading(
        PressureStage stage,
        StageReading reading,
        PressurePlan plan
    )
    {
        var judged = StageEvaluation.Judge(stage, reading, SetUp, plan);

        // A burst can't be done again; what the gauge could not read decides nothing.
        return IsAboveRange(reading.Burst?.Pressure.InUnit())
            ? (
                Engineering.Conformity.Verdict.Undecided,
                $"{judged.Sentence} This lies above the range of {SetUp.Gauge} ({GaugeRange}), so nothing is decided by it."
            )
            : (judged.Verdict, judged.Sentence);
    }

    private void Take(
        PressureStage stage,
        StageReading reading,
        Verdict verdict,
        string sentence,
        PressurePlan plan,
        Actor actor,
        DateTimeOffset at
    )
    {
        sentence = WithRepeats(Stages.Count + 1, sentence);
        Stages =
        [
            .. Stages,
            new StageResult(stage, reading, verdict, sentence, at, actor.PrintedName),
        ];
        if (verdict == Engineering.Conformity.Verdict.Fail || Stages.Count == Ladder(plan).Count)
        {
            Verdict = Verdicts.Worst(Stages.Select(s => s.Verdict));
            VerdictSentence =
                Stages
                    .OrderByDescending(s => s.Reading.Burst is not null)
                    .ThenByDescending(s => s.Stage.FactorOnMeop)
                    .FirstOrDefault(s => s.Verdict == Verdict)
                    ?.Sentence
                ?? sentence;
        }

        Note(actor, at, $"pressure stage {Stages.Count} recorded", sentence);
    }
}
