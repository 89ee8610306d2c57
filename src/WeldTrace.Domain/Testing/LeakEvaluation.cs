using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.LeakTesting;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Testing;

/// <summary>Computes a leak rate from what was observed, referred to 20 °C.</summary>
internal static class LeakEvaluation
{
    private const string RateUnit = "Pa·m³/s";
    private static readonly Temperature Reference = Temperature.FromDegreesCelsius(20);

    public static List<Refusal> Refused(IEnumerable<Engineering.Refusal> refusals, string field) =>
        [
            .. refusals.Select(r => new Refusal(
                "computation",
                $"{r.Where}: {r.What} {r.Mend}",
                field
            )),
        ];

    public static Engineering.Computed<TracerGasTest> Evaluate(
        TracerObservation seen,
        LeakRate limit
    ) =>
        TracerGasTest.Evaluate(
            new TracerReadings
            {
                CalibratedLeak = LeakRate.FromSi(seen.CalibratedLeak.InUnit()),
                CalibratedLeakUncertainty = LeakRate.FromSi(
                    seen.CalibratedLeakUncertainty.InUnit()
                ),
                SignalOfCalibratedLeak = seen.SignalOfCalibratedLeak.InUnit(),
                Background = seen.Background.InUnit(),
                SignalOfVessel = seen.SignalOfVessel.InUnit(),
                SignalUncertainty = seen.SignalUncertainty.InUnit(),
                Concentration = seen.ConcentrationPercent.InUnit() / 100,
                ConcentrationUncertainty = seen.ConcentrationUncertaintyPercent.InUnit() / 100,
            },
            WrittenLimit.Exact(limit.SiValue, RateUnit)
        );

    public static Engineering.Computed<PressureDecay> Evaluate(
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

    public static Engineering.Computed<BubbleImmersion> Evaluate(BubbleTest seen, LeakRate limit)
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
}
