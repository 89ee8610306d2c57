using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.ProductionTesting;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Demo;

/// <summary>Vessels sampled by lot: a lot whose section has passed, one whose samples are to be chosen, one whose samples were burst, and vessels in no lot yet.</summary>
internal sealed class DemoLots(
    WeldTraceDbContext db,
    DemoWorkshop shop,
    DemoCast cast,
    DemoClock clock
)
{
    private const int First = 11;
    private const int InALot = 3;

    public async Task AddAsync(CancellationToken cancellation)
    {
        var design = await DrawAsync(cancellation);
        var own = shop with { Design = design };
        await TestProductionAsync(cancellation);
        List<DemoVessel> vessels = [];
        for (var number = First; number < First + (3 * InALot); number++)
        {
            vessels.Add(
                await DemoVessel.PlanAsync(
                    db,
                    own,
                    cast,
                    clock,
                    number,
                    shop.Material.Tube,
                    cancellation
                )
            );
        }

        var lot = await FormAsync("PL-26-06", design, vessels[..InALot], cancellation);
        await ChooseAsync(lot, design, vessels[..InALot], cancellation);
        await vessels[0].GoToAsync(int.MaxValue, cancellation);
        await FormAsync("PL-26-07", design, vessels[InALot..(2 * InALot)], cancellation);
        await new DemoBursts(db, shop, cast, clock, this).AddAsync(cancellation);
    }

    private async Task TestProductionAsync(CancellationToken cancellation)
    {
        var at = clock.AfterMinutes(90);
        var test = ProductionTest
            .Record(
                "PT-26-01",
                shop.Machine,
                shop.Procedure,
                shop.Tool,
                "Visual over the whole length without finding; two face and two root bends to 180° without crack; macro without cavity.",
                true,
                new ExaminerFacts(shop.Examiner.Certificates, clock.Today),
                cast.Inspector,
                at
            )
            .Must();
        db.AddRange(test, Signature.Of(test, cast.Inspector, ProductionTest.Meaning, at));
        await db.SaveForDemoAsync(cancellation);
    }

    private async Task<VesselDesign> DrawAsync(CancellationToken cancellation)
    {
        var content = DemoDesigns.Reservoir;
        var design = VesselDesign
            .Draw(
                "NR-10L",
                "Nitrogen reservoir 10 l, sampled by lot",
                content with
                {
                    ProductionTests = new ProductionTestRule(
                        Length.FromMetres(100),
                        null,
                        AfterToolChange: true,
                        AfterMachineWork: true,
                        AfterDeviation: false,
                        AfterDefect: false,
                        "visual, two face and two root bends, one macro",
                        "Design specification DS-10 of this workshop, section 8; not checked against a class rule"
                    ),
                    Samples = new SamplePlan(
                        [new(SampleKind.Section, 1, SampleChoice.First)],
                        "Design specification DS-10 of this workshop, section 7; not checked against a code",
                        0.90m,
                        0.95m,
                        null
                    ),
                    Route =
                    [
                        .. content.Route.Where(s =>
                            s.Kind is not (StepKind.Section or StepKind.Acceptance)
                        ),
                        new(
                            105,
                            StepKind.Section,
                            "Section of the lower end",
                            "J1",
                            null,
                            StopPoint.None,
                            SampleKind.Section
                        ),
                        content.Route[^1],
                    ],
                },
                cast.Engineer,
                clock.AfterMinutes(60)
            )
            .Must();
        return await ReleaseAsync(design, cancellation);
    }

    /// <summary>Saves a drawn design and releases it.</summary>
    public async Task<VesselDesign> ReleaseAsync(
        VesselDesign design,
        CancellationToken cancellation
    )
    {
        db.Add(design);
        await db.SaveForDemoAsync(cancellation);
        var at = clock.AfterMinutes(120);
        design.Release(null, cast.QualityManager, at).Must();
        db.Add(
            Signature.Of(design, cast.QualityManager, "I release this design for production.", at)
        );
        await db.SaveForDemoAsync(cancellation);
        return design;
    }

    public async Task<ProductionLot> FormAsync(
        string number,
        VesselDesign design,
        IReadOnlyList<DemoVessel> vessels,
        CancellationToken cancellation
    )
    {
        const int Days = 60;
        var lot = ProductionLot
            .Form(
                number,
                design,
                new LotRule(
                    RecordName.Of(shop.Procedure),
                    RecordName.Of(shop.Tools.Design),
                    RecordName.Of(shop.Machine),
                    RecordName.Of(shop.Material.Tube),
                    clock.Today,
                    clock.Today.AddDays(Days)
                ),
                [.. vessels.Select(v => v.Vessel)],
                cast.Engineer,
                clock.AfterMinutes(20)
            )
            .Must();
        db.Add(lot);
        await db.SaveForDemoAsync(cancellation);
        return lot;
    }

    public async Task ChooseAsync(
        ProductionLot lot,
        VesselDesign design,
        IReadOnlyList<DemoVessel> vessels,
        CancellationToken cancellation
    )
    {
        var at = clock.AfterMinutes(10);
        lot.ChooseSamples([], [.. vessels.Select(v => v.Vessel)], design, cast.Inspector, at)
            .Must();
        db.Add(Signature.Of(lot, cast.Inspector, ProductionLot.SamplingMeaning, at));
        await db.SaveForDemoAsync(cancellation);
    }
}
