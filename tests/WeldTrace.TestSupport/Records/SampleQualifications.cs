using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Limits;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Procedures;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Tooling;
using WeldTrace.Domain.Welding;
using WeldTrace.Engineering.Joints;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.TestSupport.Records;

/// <summary>A qualification with what was welded and tested for it.</summary>
public sealed record SampleQualification(
    QualificationRecord Record,
    IReadOnlyList<TestPiece> Pieces,
    IReadOnlyList<SpecimenTest> Tests
)
{
    /// <summary>All records, to be saved.</summary>
    public IReadOnlyList<Record> All => [Record, .. Pieces, .. Tests];
}

/// <summary>Takes procedures through their qualification by the same rules as everyone.</summary>
public static class SampleQualifications
{
    private static readonly Person Examiner = SamplePeople.Entered("Ines Falk", Role.Inspector);
    private static readonly DateOnly Today = DateOnly.FromDateTime(SampleTime.Start.Date);

    public static PlanTables Tables { get; } = TablesOf(ShippedLimits.StrictRange);

    public static PlanTables TablesOf(string range, string extent = ShippedLimits.Extent) =>
        new(
            SampleLimits.Of(ShippedLimits.Groups),
            SampleLimits.Of(extent),
            SampleLimits.Of(ShippedLimits.Tensile),
            SampleLimits.Of(ShippedLimits.Bend),
            SampleLimits.Of(ShippedLimits.Imperfections),
            SampleLimits.Of(range)
        );

    /// <summary>Pieces of 500 mm with 50 mm discarded at both ends; minimum of the parent 260 MPa.</summary>
    public static PlanRequest Request { get; } =
        new(
            SeveralPasses: false,
            Length.FromMillimetres(500),
            Length.FromMillimetres(50),
            TestKind.Ultrasonic,
            [],
            new TensileBasis(new Measured("260", "MPa"), "EN 755-2:2016", null, null, null, null),
            null,
            null,
            null
        );

    public static QualificationRecord Open(
        ProcedureRevision revision,
        PlanRequest? request = null,
        PlanTables? tables = null,
        string number = "WPQR-1"
    ) =>
        Accept.Value(
            QualificationRecord.Open(
                number,
                revision,
                request ?? Request,
                tables ?? Tables,
                SamplePeople.Engineer,
                SampleTime.Start
            )
        );

    /// <summary>Welded at both ends of the heat input, every test passed, signed.</summary>
    public static SampleQualification Signed(
        ProcedureRevision revision,
        ToolDesign design,
        PlanTables? tables = null,
        PlanRequest? request = null
    )
    {
        var record = Open(revision, request, tables);
        var pieces = record.Plan.Pieces.Select(p => Welded(record, p, revision, design)).ToList();
        var tests = record
            .Plan.Tests.Select(t =>
                Accept.Value(
                    Enter(
                        record,
                        t,
                        pieces.First(p => p.Mark == t.PieceMark),
                        [],
                        revision.Content,
                        Good(t.Kind)
                    )
                )
            )
            .ToList();
        var sample = new SampleQualification(record, pieces, tests);
        Accept.All(Sign(sample, revision, tables));
        return sample;
    }

    public static Outcome Sign(
        SampleQualification sample,
        ProcedureRevision revision,
        PlanTables? tables = null,
        Actor? actor = null
    ) =>
        sample.Record.Sign(
            revision,
            sample.Pieces,
            sample.Tests,
            (tables ?? Tables).Range,
            (tables ?? Tables).Groups,
            "Test works",
            actor ?? SamplePeople.QualityManager,
            SampleTime.Start
        );

    /// <summary>A piece welded as planned.</summary>
    public static TestPiece Welded(
        QualificationRecord record,
        PlannedPiece planned,
        ProcedureRevision revision,
        ToolDesign design
    )
    {
        var facts = Facts(record, planned, revision, design);
        var piece = Accept.Value(Begin(facts));
        Accept.All(
            piece.Finish(
                Log(record, planned),
                null,
                facts.Tool!,
                SamplePeople.Operator,
                SampleTime.Start
            )
        );
        return piece;
    }

    public static Outcome<TestPiece> Begin(TestPieceFacts facts) =>
        TestPiece.Begin(
            Guid.CreateVersion7(SampleTime.Start),
            facts,
            SamplePeople.Operator,
            SampleTime.Start
        );

    public static TestPieceFacts Facts(
        QualificationRecord record,
        PlannedPiece planned,
        ProcedureRevision revision,
        ToolDesign design
    ) =>
        new(
            record,
            planned,
            revision,
            [],
            [SampleMaterial.Lot()],
            SampleMachines.Entered(),
            SampleTools.InService(design),
            design,
            Today
        );

    /// <summary>A log that ran at the planned settings.</summary>
    public static LogSummary Log(
        QualificationRecord record,
        PlannedPiece planned,
        double off = 0,
        bool reachedEnd = true
    ) =>
        new(
            "piece.csv",
            new string('a', 64),
            1000,
            new string('b', 64),
            9000,
            180,
            record.Plan.PieceLength,
            reachedEnd,
            [],
            [
                .. planned.Settings.Select(s => new LoggedParameter(
                    s.Parameter,
                    9000,
                    s.ValueSi,
                    s.ValueSi * (1 + off),
                    s.ValueSi,
                    0
                )),
            ],
            [],
            []
        );

    public static Outcome<SpecimenTest> Enter(
        QualificationRecord record,
        PlannedTest planned,
        TestPiece? piece,
        IReadOnlyList<SpecimenTest> earlier,
        ProcedureContent content,
        SpecimenEntry entry,
        Func<SpecimenFacts, SpecimenFacts>? edit = null,
        TestHeader? header = null
    )
    {
        var facts = new SpecimenFacts(
            record,
            planned,
            piece,
            earlier,
            content,
            Tables.Imperfections,
            SampleCertificates.AllMethods(Examiner),
            Instrument(planned.Kind),
            "I-1",
            Today
        );
        return SpecimenTest.Enter(
            Guid.CreateVersion7(SampleTime.Start),
            edit?.Invoke(facts) ?? facts,
            header ?? Header(planned.Kind),
            entry,
            null,
            Examiner.AsActor(),
            SampleTime.Start
        );
    }

    public static TestHeader Header(TestKind kind) =>
        new(
            TestKinds.Of(kind).Standard,
            "2012",
            "ISO 25239-5",
            "2020, level as agreed",
            "",
            Today,
            ""
        );

    /// <summary>An entry that passes, of a 3 mm joint in 6061-T6.</summary>
    public static SpecimenEntry Good(TestKind kind) =>
        kind switch
        {
            TestKind.TransverseTensile => Tensile("15.0"),
            TestKind.RootBend or TestKind.FaceBend or TestKind.SideBend => Bend("0"),
            TestKind.Hardness => new SpecimenEntry(
                Value: new ValueEntry(new("72", "HV"), null, null, "")
            ),
            TestKind.Leak => new SpecimenEntry(
                Value: new ValueEntry(
                    new("0.000001", "Pa·m³/s"),
                    null,
                    new("0.00001", "Pa·m³/s"),
                    ""
                )
            ),
            _ => Examination(true),
        };

    /// <summary>25 mm by 3 mm, broken in the heat-affected zone.</summary>
    public static SpecimenEntry Tensile(string kilonewtons) =>
        new(
            Tensile: new TensileEntry(
                new("25.0", "mm"),
                new("3.00", "mm"),
                new(kilonewtons, "kN"),
                FracturePlace.HeatAffectedZone
            )
        );

    public static SpecimenEntry Bend(string crack, string former = "18") =>
        new(Bend: new BendEntry(new(former, "mm"), new("180", "°"), new(crack, "mm")));

    public static SpecimenEntry Examination(
        bool isAcceptable,
        params IReadOnlyList<SizedImperfection> imperfections
    ) => new(Examination: new ExaminationEntry(isAcceptable, "none", imperfections));

    private static Instrument? Instrument(TestKind kind) =>
        TestKinds.Of(kind).Instrument is { } measures
            ? SampleInstruments.Calibrated("I-1", measures, "mm")
            : null;
}
