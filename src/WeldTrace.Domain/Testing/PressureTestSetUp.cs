using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Testing;

// How the test is set up, and who acknowledged what it stores.
public sealed partial class PressureTest
{
    private Measured? GaugeRange => Instruments?.FirstOrDefault(i => i.Mark == SetUp.Gauge)?.Upper;

    private bool IsAboveRange(double? bar) =>
        bar is { } read && GaugeRange is { Unit: "bar" } upper && read > upper.InUnit();

    private void CheckRange(Checks checks, StageReading reading) =>
        checks.That(
            !IsAboveRange(StageEvaluation.HighestBar(reading)),
            "F13",
            $"A pressure above {GaugeRange}, the range of {SetUp.Gauge}, can't have been read with it. Check digits and unit; if the pressure was as high, withdraw the test and report a finding.",
            nameof(reading.StartPressure)
        );

    /// <inheritdoc/>
    public SampleResult? AsSample() =>
        SignedAt is { } at
        && Verdict is { } verdict
        && Stages.Select(s => s.Reading.Burst).OfType<BurstReading>().FirstOrDefault() is { } burst
            ? new SampleResult(
                SampleKind.Burst,
                VesselId,
                VesselSerial,
                RecordName.Of(this),
                verdict,
                VerdictSentence,
                Engineering.Quantities.Pressure.FromBar(burst.Pressure.InUnit()),
                at
            )
            : null;

    private static IReadOnlyList<NeededInstrument> Needed(PressureSetUp setUp, PressurePlan plan) =>
        [
            new(
                nameof(setUp.Gauge),
                InstrumentKind.Pressure,
                plan.Target(Ladder(plan, setUp).MaxBy(s => s.FactorOnMeop)!).Bar,
                "bar"
            ),
            new(nameof(setUp.Thermometer), InstrumentKind.Temperature, null, "°C"),
            new(
                DimensionInstrument,
                setUp.IsStrain ? InstrumentKind.Other : InstrumentKind.Length,
                null,
                setUp.DimensionBefore.Unit
            ),
        ];

    /// <summary>Where a design lays samples down, a vessel bursts only when its lot chose it for that.</summary>
    private static void CheckSample(Checks checks, PressureSetUp setUp, TestFacts facts) =>
        checks.That(
            setUp.ToBurst != true
                || facts.Design.Content.Samples is null
                || facts.Vessel.Sample?.Kind == SampleKind.Burst,
            "sample",
            $"{facts.Vessel.Serial} is not chosen as a burst sample of its lot; test it without burst, or have it chosen before welding starts.",
            nameof(setUp.ToBurst)
        );

    private static HazardAcknowledgement? Acknowledge(
        DesignContent content,
        PressureSetUp setUp,
        Actor actor,
        DateTimeOffset at
    )
    {
        var plan = content.Pressures;
        var highest = Ladder(plan, setUp).Select(plan.Target).Max();
        return TestHazard.Of(content, highest, !plan.IsLiquid) is { } hazard
            ? HazardAcknowledgement.Of(hazard, actor, at)
            : null;
    }

    private static void CheckSetUp(Checks checks, PressureSetUp setUp)
    {
        checks.That(
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
        SetEvaluation.CheckBefore(checks, setUp);
    }
}
