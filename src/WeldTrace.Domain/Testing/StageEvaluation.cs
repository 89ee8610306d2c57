using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.PressureTesting;
using WeldTrace.Engineering.Quantities;
using PressureStage = WeldTrace.Domain.VesselDesigns.PressureStage;

namespace WeldTrace.Domain.Testing;

/// <summary>Judges one stage of the ladder from its readings.</summary>
internal static class StageEvaluation
{
    public static void Check(
        Checks checks,
        PressureStage stage,
        StageReading reading,
        PressureSetUp setUp,
        DesignContent design
    )
    {
        var plan = design.Pressures;
        if (stage.Kind == PressureStageKind.ReturnToZero)
        {
            SetEvaluation.Check(checks, reading, setUp);
            ExpansionEvaluation.Check(checks, reading);
            return;
        }

        if (stage.Kind == PressureStageKind.Burst)
        {
            BurstEvaluation.Check(checks, reading, design);
            return;
        }

        CheckHold(checks, reading, plan);
        CheckRise(checks, stage, reading);
        if (!checks.AllHold)
        {
            return;
        }

        var target = plan.Target(stage).Bar;
        var least = target * (1 - (double)plan.TargetTolerance);
        checks.That(
            Comparison
                .AtLeast(
                    new Engineering.Conformity.Measured(reading.StartPressure!.InUnit(), "bar"),
                    WrittenLimit.Exact(least, "bar")
                )
                .Verdict == Verdict.Pass,
            "F15",
            FormattableString.Invariant(
                $"{stage.Name} needs {target:0.##} bar (at least {least:0.##}); the reading is {reading.StartPressure.Digits} bar. Bring the pressure up before the hold begins."
            ),
            nameof(reading.StartPressure)
        );
    }

    /// <summary>Highest gauge pressure that was read, in bar; null when none was.</summary>
    public static double? HighestBar(StageReading reading)
    {
        double?[] read =
        [
            reading.StartPressure?.InUnit(),
            reading.EndPressure?.InUnit(),
            reading.HighestPressure?.InUnit(),
        ];
        return read.Max();
    }

    private static void CheckRise(Checks checks, PressureStage stage, StageReading reading)
    {
        if (stage.RatePerMinute is not null)
        {
            Reading.Between(
                checks,
                reading.FastestRise,
                0,
                10000,
                "Fastest rise within a minute",
                nameof(reading.FastestRise)
            );
        }
    }

    private static void CheckHold(Checks checks, StageReading reading, PressurePlan plan)
    {
        Reading.Between(
            checks,
            reading.StartPressure,
            0,
            plan.Meop.Bar * 10,
            "Pressure at the start of the hold",
            nameof(reading.StartPressure)
        );
        Reading.Between(
            checks,
            reading.EndPressure,
            0,
            plan.Meop.Bar * 10,
            "Pressure at the end of the hold",
            nameof(reading.EndPressure)
        );
        Reading.Between(
            checks,
            reading.StartTemperature,
            -60,
            120,
            "Temperature at the start",
            nameof(reading.StartTemperature)
        );
        Reading.Between(
            checks,
            reading.EndTemperature,
            -60,
            120,
            "Temperature at the end",
            nameof(reading.EndTemperature)
        );
        checks.That(
            reading.HeldSeconds > 0,
            "hold",
            "Give the time of the hold in seconds, above zero.",
            nameof(reading.HeldSeconds)
        );
    }

    /// <summary>Verdict of a stage whose readings were checked.</summary>
    public static StageJudgement Judge(
        PressureStage stage,
        StageReading reading,
        PressureSetUp setUp,
        PressurePlan plan
    ) =>
        StageJudgement.Worst(
            stage.Kind switch
            {
                PressureStageKind.ReturnToZero => JudgeReturn(reading, setUp, plan),
                PressureStageKind.Burst => [BurstEvaluation.Judge(stage, reading, setUp, plan)],
                _ => [JudgeHold(stage, reading, setUp, plan)],
            }
        );

    private static IReadOnlyList<(Verdict, string, Working)> JudgeReturn(
        StageReading reading,
        PressureSetUp setUp,
        PressurePlan plan
    )
    {
        var sets = SetEvaluation
            .Judge(reading, setUp, plan)
            .Select(p => (p.Verdict, p.Sentence, p.Working));
        return ExpansionEvaluation.Judge(reading, plan) is { } expansion
            ? [.. sets, expansion]
            : [.. sets];
    }

    private static (Verdict, string, Working) JudgeHold(
        PressureStage stage,
        StageReading reading,
        PressureSetUp setUp,
        PressurePlan plan
    )
    {
        var hold = HoldEvaluation.Evaluate(Hold(stage, reading, setUp, plan)).Value;
        var ceiling = plan.HighestOrdinary.Bar * (1 + (double)plan.TargetTolerance);
        var highest = HighestBar(reading)!.Value;
        var over = Comparison.AtMost(
            new Engineering.Conformity.Measured(highest, "bar"),
            WrittenLimit.Exact(ceiling, "bar")
        );
        return over.Verdict == Verdict.Pass
            ? (hold.Judgement.Verdict, $"{stage.Name}: {hold.Judgement.Sentence}", hold.Working)
            : (
                Verdict.Fail,
                FormattableString.Invariant(
                    $"{stage.Name}: {highest:0.##} bar is above the ladder's {ceiling:0.##} bar; the vessel stops until the design authority has decided."
                ),
                over.Working
            );
    }

    private static HoldTest Hold(
        PressureStage stage,
        StageReading reading,
        PressureSetUp setUp,
        PressurePlan plan
    )
    {
        var atmosphere = Pressure.FromMillibar(setUp.AtmosphericPressure.InUnit());
        return new HoldTest
        {
            Medium = plan.IsLiquid ? TestMedium.Liquid : TestMedium.Gas,
            Readings =
            [
                At(0, reading.StartPressure!, reading.StartTemperature!, atmosphere),
                At(reading.HeldSeconds, reading.EndPressure!, reading.EndTemperature!, atmosphere),
            ],
            PressureUncertainty = Pressure.FromBar(setUp.GaugeUncertainty.InUnit()),
            TemperatureUncertaintyKelvin = setUp.TemperatureUncertainty.InUnit(),
            AllowedDrop = WrittenLimit.Exact(plan.AllowedHoldDrop.Bar, "bar"),
            RequiredHold = TimeSpan.FromSeconds(stage.HoldSeconds),
        };
    }

    private static HoldReading At(
        int seconds,
        Records.Measured pressure,
        Records.Measured temperature,
        Pressure atmosphere
    ) =>
        new(
            TimeSpan.FromSeconds(seconds),
            atmosphere + Pressure.FromBar(pressure.InUnit()),
            Temperature.FromDegreesCelsius(temperature.InUnit())
        );
}
