using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Sectioning;

/// <summary>
/// A section of a weld: its photograph is taken in, its scale set, what it shows measured on it, and concluded; then it is signed.
/// Whatever is corrected before the signature stays readable.
/// </summary>
public sealed partial class SectionExamination : TestRecord, ISampleTest
{
    /// <summary>Field that names what it was measured with.</summary>
    public const string Instrument = nameof(Instrument);

    private SectionExamination(Guid id)
        : base(id) { }

    /// <inheritdoc/>
    public override string Kind => "section";

    /// <inheritdoc/>
    public override string Label =>
        $"{VesselSerial} section of {Cut.JointCode}, step {StepSequence}";

    /// <summary>Where and how it was cut.</summary>
    public SectionCut Cut { get; private set; } = null!;

    /// <summary>By what it is examined and judged; null in sections recorded before sizes were measured on the picture.</summary>
    public SectionStandards? Standards { get; private set; }

    /// <summary>The one typed size of a section recorded before sizes were measured on the picture; else null.</summary>
    public SectionMeasurement? Measurement { get; private set; }

    /// <summary>Photograph.</summary>
    public Photograph Photograph { get; private set; } = null!;

    /// <summary>What was measured on the photograph; null in sections recorded before that.</summary>
    public SectionPicture? Picture { get; private set; }

    /// <inheritdoc/>
    protected override ExaminationMethod Examination => ExaminationMethod.Macroscopic;

    /// <inheritdoc/>
    protected override FindingOrigin Origin => FindingOrigin.Examination;

    /// <inheritdoc/>
    protected override SeamPlace? Place => new(Cut.JointCode, Cut.PassNumber, Cut.Angle, null);

    /// <inheritdoc/>
    protected override bool ShowedOtherThanPass =>
        base.ShowedOtherThanPass
        || Picture?.Marks.Any(IsOtherThanPass) == true
        || Picture?.Corrections.Any(c => c.Mark is { } mark && IsOtherThanPass(mark)) == true;

    /// <summary>Takes in the photograph of a section. There is no verdict before it was measured and concluded.</summary>
    /// <param name="id">Identity made when the form was shown, so that sending it twice records one section.</param>
    /// <param name="facts">Vessel, step, design and findings.</param>
    /// <param name="cut">Where and how it was cut.</param>
    /// <param name="standards">By what it is examined and judged; the thickness is that of the joint.</param>
    /// <param name="photograph">Photograph.</param>
    /// <param name="remark">Anything worth telling; at most 400 characters.</param>
    /// <param name="actor">Inspector.</param>
    /// <param name="at">UTC instant.</param>
    public static Outcome<SectionExamination> TakeIn(
        Guid id,
        TestFacts facts,
        SectionCut cut,
        SectionStandards standards,
        Photograph photograph,
        string? remark,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(cut);
        ArgumentNullException.ThrowIfNull(standards);
        ArgumentNullException.ThrowIfNull(photograph);
        var checks = CheckBeginning(facts, StepKind.Section, remark, actor);
        CheckCut(checks, facts, cut, standards);
        var used = checks.Take(
            facts,
            new NeededInstrument(Instrument, InstrumentKind.Length, null, "mm")
        );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var section = new SectionExamination(id)
        {
            Cut = cut,
            Standards = standards,
            Photograph = photograph,
            Picture = SectionPicture.Blank,
            Instruments = used,
            Remark = string.IsNullOrWhiteSpace(remark) ? null : remark.Trim(),
        };
        section.SetOrigin(facts.Vessel, facts.Step.Sequence, actor, at);
        section.Note(actor, at, "section taken in");
        return section;
    }

    /// <inheritdoc/>
    public SampleResult? AsSample() =>
        SignedAt is { } at && Verdict is { } verdict
            ? new(
                SampleKind.Section,
                VesselId,
                VesselSerial,
                RecordName.Of(this),
                verdict,
                VerdictSentence,
                null,
                at
            )
            : null;

    private static void CheckCut(
        Checks checks,
        TestFacts facts,
        SectionCut cut,
        SectionStandards standards
    ) =>
        checks
            .That(
                facts.Design.Content.Joint(cut.JointCode) is not null,
                "joint",
                $"The design has no joint '{cut.JointCode}'.",
                nameof(SectionCut.JointCode)
            )
            .That(
                cut.Angle.Degrees is >= 0 and < 540,
                "angle",
                "Give the angle of the cut from the start of the pass, 0° to 540°.",
                nameof(SectionCut.Angle)
            )
            .Text(cut.Specimen, 80, "Give the mark of the specimen", nameof(SectionCut.Specimen))
            .Text(
                cut.Plane,
                80,
                "Give the plane of the cut, for instance across the weld",
                nameof(SectionCut.Plane)
            )
            .Text(cut.Etchant, 80, "Name the etchant and the time", nameof(SectionCut.Etchant))
            .Text(
                cut.Magnification,
                80,
                "Give the magnification or the length of the scale",
                nameof(SectionCut.Magnification)
            )
            .Text(
                standards.Method,
                LongestText,
                "Name the method standard",
                nameof(SectionStandards.Method)
            )
            .Text(
                standards.MethodEdition,
                LongestText,
                "Give the edition of the method standard",
                nameof(SectionStandards.MethodEdition)
            );

    private static bool IsOtherThanPass(PictureMark mark) =>
        mark.Result.Verdict
            is Engineering.Conformity.Verdict.Fail
                or Engineering.Conformity.Verdict.Undecided;
}
