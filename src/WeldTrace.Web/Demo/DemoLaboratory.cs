using System.Globalization;
using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Laboratory;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Engineering.Joints;
using WeldTrace.Persistence;

namespace WeldTrace.Web.Demo;

/// <summary>Laboratory tests of the lot of the first vessels, with invented readings that pass.</summary>
internal sealed class DemoLaboratory(
    WeldTraceDbContext db,
    DemoWorkshop shop,
    DemoCast cast,
    DemoClock clock
)
{
    private static readonly (double Position, int Hardness)[] Traverse =
    [
        (-20, 108),
        (-16, 107),
        (-12, 99),
        (-8, 78),
        (-6, 72),
        (-4, 76),
        (-2, 80),
        (0, 82),
        (2, 81),
        (4, 77),
        (6, 70),
        (8, 76),
        (12, 98),
        (16, 106),
        (20, 108),
    ];

    public async Task AddAsync(string productionLot, CancellationToken cancellation)
    {
        await EnterAsync(
            productionLot,
            TestKind.TransverseTensile,
            "TM-02",
            new LaboratoryEntry(
                Tensile: new(
                    new(180, "design specification DS-10, section 6"),
                    Of(310, 0, "MPa"),
                    ParentReference.SamePlate,
                    Of(0.05, 2, "kN"),
                    Of(0.02, 2, "mm"),
                    [Broke("T1", "15.61"), Broke("T2", "15.48")]
                )
            ),
            cancellation
        );
        await EnterAsync(
            productionLot,
            TestKind.Hardness,
            "HT-01",
            new LaboratoryEntry(
                Hardness: new(
                    "HV 5",
                    Of(12, 0, "s"),
                    Of(2.0, 1, "mm"),
                    Of(108, 0, "HV"),
                    Of(60, 0, "HV"),
                    "block 112 HV 5, checked the same morning",
                    [
                        .. Traverse.Select(p => new HardnessRow(
                            Of(p.Position, 0, "mm"),
                            Of(p.Hardness, 0, "HV")
                        )),
                    ]
                )
            ),
            cancellation
        );
    }

    private async Task EnterAsync(
        string productionLot,
        TestKind kind,
        string mark,
        LaboratoryEntry entry,
        CancellationToken cancellation
    )
    {
        var at = clock.AfterMinutes(60);
        var machine = shop.Instruments.All.Single(i => i.Mark == mark);
        var test = LaboratoryTest
            .Enter(
                Guid.CreateVersion7(at),
                new LaboratoryFacts(
                    null,
                    [],
                    new ExaminerFacts(shop.Examiner.Certificates, clock.Today),
                    new TypedInstrument(LaboratoryTest.InstrumentField, mark, machine)
                ),
                new LaboratorySample(
                    null,
                    productionLot,
                    "J1",
                    $"{productionLot}-P1",
                    "60 to 180 mm from the start of the weld",
                    "WP-101 A",
                    clock.Today
                ),
                kind,
                new TestHeader(
                    TestKinds.Of(kind).Standard,
                    kind == TestKind.Hardness ? "2001" : "2012",
                    "Design specification DS-10",
                    "revision B, section 6",
                    "",
                    clock.Today,
                    ""
                ),
                entry,
                null,
                cast.Inspector,
                at
            )
            .Must();
        db.AddRange(test, Signature.Of(test, cast.Inspector, SpecimenTest.TestedMeaning, at));
        await db.SaveForDemoAsync(cancellation);
    }

    private static TensileRow Broke(string mark, string kilonewtons) =>
        new(
            mark,
            new(
                Of(12.50, 2, "mm"),
                Of(5.98, 2, "mm"),
                new Measured(kilonewtons, "kN"),
                FracturePlace.HeatAffectedZone
            ),
            Engineering.Paths.WeldSide.Retreating
        );

    private static Measured Of(double value, int decimals, string unit) =>
        new(value.ToString($"F{decimals}", CultureInfo.InvariantCulture), unit);
}
