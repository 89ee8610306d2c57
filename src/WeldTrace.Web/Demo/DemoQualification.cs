using System.Text;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Persistence;
using WeldTrace.Persistence.ProcessLogStore;
using WeldTrace.Web.LogJudging;

namespace WeldTrace.Web.Demo;

/// <summary>Qualifies the demonstration's procedure: two test pieces with their logs, each tested as planned, through the rules of the records.</summary>
internal sealed class DemoQualification(
    WeldTraceDbContext db,
    DemoCast cast,
    DemoClock clock,
    DemoExaminer examiner
)
{
    private const double PieceMillimetres = 400;

    /// <summary>Plans, welds, tests and signs; the procedure is on trial.</summary>
    public async Task<QualificationRecord> QualifyAsync(
        ProcedureRevision revision,
        DemoProcedureParts parts,
        CancellationToken cancellation
    )
    {
        var tables = Tables();
        var record = QualificationRecord
            .Open("WPQR-101-1", revision, Request, tables, cast.Engineer, clock.AfterMinutes(60))
            .Must();
        db.Add(record);
        await db.SaveForDemoAsync(cancellation);
        var pieces = await WeldAllAsync(record, revision, parts, cancellation);
        List<SpecimenTest> tests = [];
        foreach (var planned in record.Plan.Tests)
        {
            var piece = pieces.First(p => p.Mark == planned.PieceMark);
            tests.Add(
                await TestAsync(record, planned, piece, revision.Content, tables, cancellation)
            );
        }

        var at = clock.AfterMinutes(240);
        record
            .Sign(
                revision,
                pieces,
                tests,
                tables.Range,
                tables.Groups,
                DemoData.SiteName,
                cast.QualityManager,
                at
            )
            .Must();
        db.Add(Signature.Of(record, cast.QualityManager, QualificationRecord.SignMeaning, at));
        await db.SaveForDemoAsync(cancellation);
        return record;
    }

    private async Task<IReadOnlyList<TestPiece>> WeldAllAsync(
        QualificationRecord record,
        ProcedureRevision revision,
        DemoProcedureParts parts,
        CancellationToken cancellation
    )
    {
        List<TestPiece> pieces = [];
        foreach (var planned in record.Plan.Pieces)
        {
            var facts = new TestPieceFacts(
                record,
                planned,
                revision,
                pieces,
                parts.Lots,
                parts.Machine,
                parts.Tools.OnTrial,
                parts.Tools.Design,
                Today
            );
            parts.Tools.MakeReady(
                parts.Tools.OnTrial,
                new ToolTask(record.Plan.PieceLength, facts.Label, planned.Mark),
                cast,
                clock
            );
            pieces.Add(await WeldAsync(facts, cancellation));
        }

        return pieces;
    }

    private DateOnly Today => DateOnly.FromDateTime(clock.AfterMinutes(1).UtcDateTime);

    private static PlanRequest Request =>
        new(
            SeveralPasses: false,
            Length.FromMillimetres(PieceMillimetres),
            Length.FromMillimetres(50),
            TestKind.Ultrasonic,
            [TestKind.Leak],
            new TensileBasis(null, null, null, null, null, null),
            null,
            null,
            null
        );

    private PlanTables Tables()
    {
        return new PlanTables(
            Of(ShippedLimits.Groups),
            Of(ShippedLimits.Extent),
            Of(ShippedLimits.Tensile),
            Of(ShippedLimits.Bend),
            Of(ShippedLimits.Imperfections),
            Of(ShippedLimits.StrictRange)
        );

        LimitTable Of(string code) => db.LimitTables.Single(t => t.Code == code);
    }

    private async Task<TestPiece> WeldAsync(TestPieceFacts facts, CancellationToken cancellation)
    {
        var begun = clock.AfterMinutes(90);
        var piece = TestPiece.Begin(Guid.CreateVersion7(begun), facts, cast.Operator, begun).Must();
        db.Add(piece);
        await db.SaveForDemoAsync(cancellation);
        using var file = new MemoryStream(
            Encoding.UTF8.GetBytes(new DemoLog(Run(facts.Planned)).ToCsv())
        );
        var read = await TestPieceLog.ReadAsync(
            file,
            $"{facts.Qualification.Number}-{piece.Mark}.csv",
            facts.Machine!,
            (facts.Qualification, facts.Planned, facts.Revision.Content),
            cancellation
        );
        var at = clock.AfterMinutes(8);
        piece.Finish(read.Summary!, null, facts.Tool!, cast.Operator, at).Must();
        db.Add(Signature.Of(piece, cast.Operator, TestPiece.WeldedMeaning, at));
        db.AddProcessLog(piece.Id, read.Log!, null);
        facts.Machine!.RememberLogColumns(
            MachineColumns.ToRemember(read.Mapping!),
            cast.Operator,
            at
        );
        await db.SaveForDemoAsync(cancellation);
        return piece;
    }

    private async Task<SpecimenTest> TestAsync(
        QualificationRecord record,
        PlannedTest planned,
        TestPiece piece,
        ProcedureContent content,
        PlanTables tables,
        CancellationToken cancellation
    )
    {
        var at = clock.AfterMinutes(45);
        var today = DateOnly.FromDateTime(at.UtcDateTime);
        var kind = TestKinds.Of(planned.Kind);
        var instrument = examiner.InstrumentFor(kind.Instrument);
        var test = SpecimenTest
            .Enter(
                Guid.CreateVersion7(at),
                new SpecimenFacts(
                    record,
                    planned,
                    piece,
                    [],
                    content,
                    tables.Imperfections,
                    examiner.Certificates,
                    instrument,
                    instrument?.Mark ?? "",
                    today
                ),
                new TestHeader(
                    kind.Standard,
                    "edition in the shop",
                    "Design specification DS-10",
                    "of this workshop, section 5",
                    "WI-31",
                    today,
                    ""
                ),
                Entry(planned.Kind),
                null,
                cast.Inspector,
                at
            )
            .Must();
        db.AddRange(test, Signature.Of(test, cast.Inspector, SpecimenTest.TestedMeaning, at));
        await db.SaveForDemoAsync(cancellation);
        return test;
    }

    private static SpecimenEntry Entry(TestKind kind) =>
        kind == TestKind.Leak
            ? new SpecimenEntry(
                Value: new ValueEntry(
                    new Measured("0.000002", "Pa·m³/s"),
                    null,
                    new Measured("0.00001", "Pa·m³/s"),
                    ""
                )
            )
            : new SpecimenEntry(
                Examination: new ExaminationEntry(
                    true,
                    kind == TestKind.Visual ? "Even face, flash removed" : "Sound, full depth",
                    kind == TestKind.MacroSection
                        ?
                        [
                            new SizedImperfection("underfill", new Measured("0.12", "mm"), null),
                            new SizedImperfection(
                                "hook",
                                new Measured("0.21", "mm"),
                                new Measured("0.30", "mm")
                            ),
                        ]
                        : []
                )
            );

    private static DemoRun Run(PlannedPiece planned) =>
        new()
        {
            TrackRadius = Length.FromMillimetres(PieceMillimetres / (2 * Math.PI)),
            Overlap = Length.Zero,
            SpindleSpeed = RotationSpeed.FromSi(planned.Of(WeldParameter.SpindleSpeed)!.ValueSi),
            TravelSpeed = Speed.FromSi(planned.Of(WeldParameter.TravelSpeed)!.ValueSi),
            PlungeDepth = Length.FromMillimetres(5.7),
            SamplesPerSecond = 50,
            Seed = planned.Mark[0],
        };
}
