using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Domain.Testing;

/// <summary>A staged pressure test against the ladder of the design: holds, return to zero with dimensions, proof.</summary>
public sealed class PressureTest : TestRecord
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
        var used = checks.Take(
            facts,
            new(
                nameof(setUp.Gauge),
                InstrumentKind.Pressure,
                plan.Meop.Bar * (double)plan.Stages.Max(s => s.FactorOnMeop),
                "bar"
            ),
            new(nameof(setUp.Thermometer), InstrumentKind.Temperature, null, "°C"),
            new(DimensionInstrument, InstrumentKind.Length, null, "mm")
        );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var test = new PressureTest(id)
        {
            Medium = plan.Medium,
            SetUp = setUp with { Gauge = used[0].Mark, Thermometer = used[1].Mark },
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

    /// <summary>The stage that comes next; null when the ladder is done or a stage has failed.</summary>
    public PressureStage? NextStage(PressurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Verdict is not null ? null : plan.Stages.ElementAtOrDefault(Stages.Count);
    }

    /// <summary>Records the next stage of the ladder. A failed stage ends the test.</summary>
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
                stageNumber == Stages.Count + 1,
                "stage",
                $"Stage {Stages.Count} is recorded already; go on with stage {Stages.Count + 1}."
            );
        if (NextStage(plan) is not { } stage)
        {
            return checks
                .That(false, "stage", "The ladder is done, or a stage has failed; sign the test.")
                .ToOutcome();
        }

        if (checks.AllHold)
        {
            StageEvaluation.Check(checks, stage, reading, plan);
        }

        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        var (verdict, sentence, _) = StageEvaluation.Judge(stage, reading, SetUp, plan);
        Stages =
        [
            .. Stages,
            new StageResult(stage, reading, verdict, sentence, at, actor.PrintedName),
        ];
        if (verdict == Engineering.Conformity.Verdict.Fail || Stages.Count == plan.Stages.Count)
        {
            Verdict = Verdicts.Worst(Stages.Select(s => s.Verdict));
            VerdictSentence =
                Stages.FirstOrDefault(s => s.Verdict == Verdict)?.Sentence ?? sentence;
        }

        Note(actor, at, $"pressure stage {stageNumber} recorded", sentence);
        return Outcome.Accepted;
    }

    /// <summary>The computation behind a recorded stage, for showing how it was worked out.</summary>
    /// <param name="result">One of <see cref="Stages"/>.</param>
    /// <param name="design">Design with the ladder.</param>
    public Working Working(StageResult result, VesselDesign design)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(design);
        return StageEvaluation
            .Judge(result.Stage, result.Reading, SetUp, design.Content.Pressures)
            .Working;
    }

    private static void CheckSetUp(Checks checks, PressureSetUp setUp)
    {
        checks
            .Text(
                setUp.DimensionName,
                80,
                "Name the dimension that is measured before and after",
                nameof(setUp.DimensionName)
            )
            .That(
                setUp.CautionsRead,
                "F14",
                "Confirm that you have read the cautions and keep the stand-off; nothing is pressurised before.",
                nameof(setUp.CautionsRead)
            );
        Reading.Between(
            checks,
            setUp.GaugeUncertainty,
            0.0001,
            100,
            "Standard uncertainty of the gauge",
            nameof(setUp.GaugeUncertainty)
        );
        Reading.Between(
            checks,
            setUp.TemperatureUncertainty,
            0,
            10,
            "Standard uncertainty of the thermometer",
            nameof(setUp.TemperatureUncertainty)
        );
        Reading.Between(
            checks,
            setUp.AtmosphericPressure,
            800,
            1100,
            "Barometer",
            nameof(setUp.AtmosphericPressure)
        );
        Reading.Between(
            checks,
            setUp.DimensionBefore,
            1,
            20000,
            "Dimension before",
            nameof(setUp.DimensionBefore)
        );
        Reading.Between(
            checks,
            setUp.DimensionUncertainty,
            0.0001,
            10,
            "Standard uncertainty of the dimension",
            nameof(setUp.DimensionUncertainty)
        );
    }
}
