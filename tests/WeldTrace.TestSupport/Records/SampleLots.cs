using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Material;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.TestSupport.Records;

/// <summary>Production lots of vessels whose design asks for destructive samples.</summary>
public static class SampleLots
{
    /// <summary>One section drawn by lot, and burst samples of the highest serials; 90 % at 95 %, 2.5 times the operating pressure.</summary>
    public static SamplePlan Plan(int bursts = 0, SampleChoice sections = SampleChoice.Drawn) =>
        new(
            [
                new(SampleKind.Section, 1, sections),
                .. bursts == 0
                    ? Array.Empty<SampleDemand>()
                    : [new(SampleKind.Burst, bursts, SampleChoice.Last)],
            ],
            "Design note DN-12",
            0.90m,
            0.95m,
            bursts == 0 ? null : 2.5m
        );

    /// <summary>The design of <see cref="SampleDesigns"/>, its section and a burst for samples only.</summary>
    public static VesselDesign Design(SamplePlan plan, string procedureNumber = "WP-07")
    {
        ArgumentNullException.ThrowIfNull(plan);
        var content = SampleDesigns.Content(procedureNumber);
        return SampleDesigns.Released(
            content: content with
            {
                Samples = plan,
                Route =
                [
                    .. content.Route.Select(s =>
                        s.Kind == StepKind.Section ? s with { OnlyFor = SampleKind.Section } : s
                    ),
                    .. plan.Demands.Any(d => d.Kind == SampleKind.Burst)
                        ?
                        [
                            new RouteTemplateStep(
                                70,
                                StepKind.PressureTest,
                                "Burst",
                                null,
                                null,
                                StopPoint.None,
                                SampleKind.Burst
                            ),
                        ]
                        : Array.Empty<RouteTemplateStep>(),
                ],
            }
        );
    }

    public static LotRule Rule(ProcedureRevision procedure, ToolDesign toolDesign) =>
        new(
            RecordName.Of(procedure),
            RecordName.Of(toolDesign),
            null,
            null,
            SampleTime.Day,
            SampleTime.Day.AddDays(20)
        );

    public static IReadOnlyList<Vessel> Vessels(VesselDesign design, MaterialLot lot, int count) =>
        [
            .. Enumerable
                .Range(1, count)
                .Select(n =>
                    SampleVessels.Planned(
                        design,
                        lot,
                        FormattableString.Invariant($"NR4-{n:0000}"),
                        "not yet"
                    )
                ),
        ];

    /// <summary>What a test of a sample showed.</summary>
    public static SampleResult Result(
        LotSample sample,
        Verdict verdict = Verdict.Pass,
        double? burstBar = null
    )
    {
        ArgumentNullException.ThrowIfNull(sample);
        return new(
            sample.Kind,
            sample.VesselId,
            sample.Serial,
            new RecordName(
                sample.Kind == SampleKind.Section ? "section" : "pressure-test",
                Guid.CreateVersion7(SampleTime.Start),
                sample.Serial
            ),
            verdict,
            "As measured.",
            burstBar is { } bar ? Pressure.FromBar(bar) : null,
            SampleTime.Start
        );
    }
}
