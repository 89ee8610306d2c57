using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.People;
using WeldTrace.Domain.Qualification;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Conformity;

namespace WeldTrace.Domain.Laboratory;

/// <summary>Everything that a laboratory test is entered and judged with.</summary>
/// <param name="Vessel">Vessel that the sample is of; null when it stands for a lot.</param>
/// <param name="WeldedBy">Everyone who welded on the vessel.</param>
/// <param name="Examiner">Certificates of the tester.</param>
/// <param name="Typed">Instrument as typed, with what the register has of it.</param>
public sealed record LaboratoryFacts(
    Vessel? Vessel,
    IReadOnlyCollection<Guid> WeldedBy,
    ExaminerFacts Examiner,
    TypedInstrument Typed
);

/// <summary>
/// A mechanical test of production samples: tensile, bend or hardness. Signed when it is entered and never changed; a repeated test
/// is another record beside it.
/// </summary>
public sealed class LaboratoryTest : Record
{
    /// <summary>Longest standard, place or remark.</summary>
    public const int LongestText = 400;

    /// <summary>Longest mark, lot or joint.</summary>
    public const int LongestMark = 40;

    /// <summary>Field that names the machine.</summary>
    public const string InstrumentField = "Instrument";

    private LaboratoryTest(Guid id)
        : base(id) { }

    /// <summary>Tests that a laboratory enters.</summary>
    public static IReadOnlyList<TestKind> Kinds { get; } =
    [
        TestKind.TransverseTensile,
        TestKind.RootBend,
        TestKind.FaceBend,
        TestKind.SideBend,
        TestKind.Hardness,
    ];

    /// <inheritdoc/>
    public override string Kind => "laboratory-test";

    /// <inheritdoc/>
    public override string Label => $"{Subject.Sample} {TestKinds.Of(Test).Word}";

    /// <inheritdoc/>
    public override IReadOnlyList<Guid> ConcernedVessels => VesselId is { } id ? [id] : [];

    /// <inheritdoc/>
    public override bool IsSealed => Version > 0;

    /// <summary>Vessel; null when the sample stands for a lot.</summary>
    public Guid? VesselId { get; private set; }

    /// <summary>Production lot, that of the vessel when there is one.</summary>
    public string ProductionLot { get; private set; } = "";

    /// <summary>What was tested.</summary>
    public LaboratorySample Subject { get; private set; } = null!;

    /// <summary>Test.</summary>
    public TestKind Test { get; private set; }

    /// <summary>How it was made.</summary>
    public TestHeader Header { get; private set; } = null!;

    /// <summary>What was measured.</summary>
    public LaboratoryEntry Entry { get; private set; } = null!;

    /// <summary>Verdict of each specimen, and figures of all.</summary>
    public IReadOnlyList<LaboratoryLine> Lines { get; private set; } = [];

    /// <summary>Instruments from the register.</summary>
    public IReadOnlyList<UsedInstrument> Instruments { get; private set; } = [];

    /// <summary>Photograph or report; null when none was handed in.</summary>
    public string? FileSha256 { get; private set; }

    /// <summary>Worst verdict of the specimens.</summary>
    public Verdict Verdict { get; private set; }

    /// <summary>The verdict in words.</summary>
    public string VerdictSentence { get; private set; } = "";

    /// <summary>Who tested.</summary>
    public Guid TesterId { get; private set; }

    /// <summary>Printed name of whoever tested.</summary>
    public string TesterName { get; private set; } = "";

    /// <summary>UTC instant at which it was entered and signed.</summary>
    public DateTimeOffset SignedAt { get; private set; }

    /// <summary>Strength and efficiency of a tensile test; null for the others.</summary>
    public Engineering.Joints.JointEfficiency? Efficiency() =>
        Entry.Tensile is { } series ? LaboratoryJudgement.Efficiency(series) : null;

    /// <summary>The evaluated hardness traverse; null for the others.</summary>
    public Engineering.Joints.HardnessTraverse? Traverse() =>
        Entry.Hardness is { } series && LaboratoryJudgement.Traverse(series).TryGet(out var found)
            ? found
            : null;

    /// <summary>Enters a test; the verdict follows from what was measured.</summary>
    /// <param name="id">Identity made when the form was shown, so that sending it twice enters one test.</param>
    /// <param name="facts">What it is judged with.</param>
    /// <param name="sample">What was tested.</param>
    /// <param name="test">Test, one of <see cref="Kinds"/>.</param>
    /// <param name="header">How it was made.</param>
    /// <param name="entry">What was measured.</param>
    /// <param name="fileSha256">Photograph or report, if one was handed in.</param>
    /// <param name="actor">Tester.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<LaboratoryTest> Enter(
        Guid id,
        LaboratoryFacts facts,
        LaboratorySample sample,
        TestKind test,
        TestHeader header,
        LaboratoryEntry entry,
        string? fileSha256,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(sample);
        ArgumentNullException.ThrowIfNull(header);
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = CheckBefore(facts, test, actor);
        CheckSample(checks, sample, header);
        SpecimenChecks.Header(checks, header, facts.Examiner.Today);
        var used = Used(checks, facts);
        var lines = LaboratoryJudgement.Of(checks, entry);
        if (!checks.AllHold || lines is null)
        {
            return checks.Refusals;
        }

        var judged = lines.Where(l => l.Verdict is not null).ToList();
        var made = new LaboratoryTest(id)
        {
            VesselId = facts.Vessel?.Id,
            ProductionLot = facts.Vessel?.ProductionLot ?? sample.ProductionLot.Trim(),
            Subject = sample,
            Test = test,
            Header = header,
            Entry = entry,
            Lines = lines,
            Instruments = used,
            FileSha256 = fileSha256,
            Verdict = Verdicts.Worst(judged.Select(l => l.Verdict!.Value)),
            VerdictSentence = Summary(judged),
            TesterId = actor.PersonId,
            TesterName = actor.PrintedName,
            SignedAt = at,
        };
        made.Note(actor, at, "laboratory test entered");
        return made;
    }

    /// <summary>What it says of the lot that its sample stands for.</summary>
    public LaboratoryResult AsLotResult() =>
        new(
            Subject.Sample,
            TestKinds.Of(Test).Word,
            RecordName.Of(this),
            Verdict,
            VerdictSentence,
            SignedAt
        );

    /// <summary>The findings that follow, one for each vessel that can still be held; none when the test passed.</summary>
    /// <param name="vessels">The vessel that the sample is of, or all vessels of the lot that it stands for.</param>
    /// <param name="actor">Tester.</param>
    /// <param name="at">UTC instant.</param>
    public IReadOnlyList<Finding> FindingsOn(
        IReadOnlyList<Vessel> vessels,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(vessels);
        return Verdict == Verdict.Pass
            ? []
            : [.. vessels.Where(v => !v.IsFinal).Select(v => FindingOn(v, actor, at))];
    }

    private Finding FindingOn(Vessel vessel, Actor actor, DateTimeOffset at) =>
        Finding.Open(
            vessel,
            (vessel.NextStep ?? vessel.Steps[^1]).Sequence,
            vessel.Id == VesselId ? FindingOrigin.Examination : FindingOrigin.LotSample,
            vessel.Id == VesselId
                ? $"{Label}: {VerdictSentence}"
                : $"Laboratory sample {Label} of lot {ProductionLot} did not pass: {VerdictSentence}",
            this,
            null,
            actor,
            at
        );

    private static Checks CheckBefore(LaboratoryFacts facts, TestKind test, Actor actor)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(Kinds.Contains(test), true);
        return new Checks()
            .Role(actor, Role.Inspector)
            .Add(facts.Examiner.Against(ExaminationMethod.Mechanical))
            .Add(SecondPerson.Check(facts.WeldedBy, actor));
    }

    private static void CheckSample(Checks checks, LaboratorySample sample, TestHeader header)
    {
        checks
            .That(
                sample.VesselSerial is not null || !string.IsNullOrWhiteSpace(sample.ProductionLot),
                "subject",
                "Give the serial number of the vessel, or the production lot that the sample stands for.",
                nameof(sample.VesselSerial)
            )
            .That(
                sample.ProductionLot.Length <= LongestMark,
                "lot",
                $"Keep the lot within {LongestMark} characters.",
                nameof(sample.ProductionLot)
            )
            .That(
                sample.WeldedOn <= header.TestedOn,
                "welded",
                "The day of welding lies after the day of the test; check both.",
                nameof(sample.WeldedOn)
            );
        checks
            .Text(sample.JointCode, LongestMark, "Name the joint", nameof(sample.JointCode))
            .Text(sample.Sample, LongestMark, "Give the mark of the sample", nameof(sample.Sample))
            .Text(
                sample.Place,
                LongestText,
                "Say where on the weld the specimens were taken",
                nameof(sample.Place)
            )
            .Text(
                sample.Procedure,
                LongestText,
                "Name the welding procedure with its revision",
                nameof(sample.Procedure)
            );
    }

    private static IReadOnlyList<UsedInstrument> Used(Checks checks, LaboratoryFacts facts)
    {
        var (typed, today) = (facts.Typed, facts.Examiner.Today);
        checks.Add(
            InstrumentRules.Check(
                typed.Found,
                typed.Typed ?? "",
                InstrumentKind.Mechanical,
                null,
                "",
                today,
                InstrumentField
            )
        );
        return typed.Found is { DueOn: { } due } found
            ? [new(found.Id, found.Mark, found.Measures, due)]
            : [];
    }

    // Whatever did not pass comes first.
    private static string Summary(IReadOnlyList<LaboratoryLine> judged)
    {
        const int Longest = 800;
        var sentence = string.Join(
            " ",
            judged.OrderBy(l => l.Verdict == Verdict.Pass).Select(l => $"{l.Name}: {l.Sentence}")
        );
        return sentence.Length <= Longest ? sentence : sentence[..(Longest - 1)] + "…";
    }
}
