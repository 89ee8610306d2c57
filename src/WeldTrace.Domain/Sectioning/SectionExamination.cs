using WeldTrace.Domain.Certification;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Lots;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;
using Measured = WeldTrace.Domain.Records.Measured;

namespace WeldTrace.Domain.Sectioning;

/// <summary>A photograph kept under its own hash.</summary>
/// <param name="Sha256">SHA-256 of the original bytes, hexadecimal.</param>
/// <param name="FileName">Name of the file as it was brought.</param>
/// <param name="MediaType">Media type, found from the content.</param>
/// <param name="WidthPixels">Width.</param>
/// <param name="HeightPixels">Height.</param>
public sealed record Photograph(
    string Sha256,
    string FileName,
    string MediaType,
    int WidthPixels,
    int HeightPixels
);

/// <summary>Imperfections of friction-stir welds that a section can show (terms of ISO 25239-1 and -5).</summary>
public enum Imperfection
{
    /// <summary>Nothing to report.</summary>
    None,

    /// <summary>Faying surface bent beside the stirred metal.</summary>
    Hook,

    /// <summary>Void in the stirred metal.</summary>
    Cavity,

    /// <summary>Trace of the original faying surface or oxide.</summary>
    JointRemnant,

    /// <summary>Thickness not welded through.</summary>
    IncompletePenetration,

    /// <summary>Face below the surface of the parent material.</summary>
    Underfill,

    /// <summary>Metal pushed out along the toe.</summary>
    ToeFlash,

    /// <summary>Surfaces parallel but offset.</summary>
    LinearMisalignment,

    /// <summary>Crack of any size.</summary>
    Crack,
}

/// <summary>What was measured on a section.</summary>
/// <param name="Imperfection">What was found.</param>
/// <param name="Size">Its size in mm; null when nothing was found.</param>
/// <param name="SizeUncertainty">Expanded uncertainty of the size, k = 2, in mm.</param>
/// <param name="Limit">Greatest permitted size in mm, from the source named; null when the design permits none.</param>
/// <param name="LimitSource">Standard or design specification with edition and clause.</param>
/// <param name="Side">Side of the weld; null when it lies in the middle.</param>
/// <param name="DistanceFromFace">Distance from the weld face in mm; null when not measured.</param>
public sealed record SectionMeasurement(
    Imperfection Imperfection,
    Measured? Size,
    Measured? SizeUncertainty,
    Measured? Limit,
    string LimitSource,
    WeldSide? Side,
    Measured? DistanceFromFace
);

/// <summary>Where and how the section was cut and made visible.</summary>
/// <param name="JointCode">Joint.</param>
/// <param name="PassNumber">Pass; null when all passes show.</param>
/// <param name="Angle">Angle of the cut from the start of the pass.</param>
/// <param name="Etchant">Etchant and time.</param>
/// <param name="Magnification">Magnification as on the photograph, or the scale's length.</param>
public sealed record SectionCut(
    string JointCode,
    int? PassNumber,
    Angle Angle,
    string Etchant,
    string Magnification
);

/// <summary>A section of a weld, photographed, measured and judged.</summary>
public sealed class SectionExamination : TestRecord, ISampleTest
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

    /// <summary>What was measured.</summary>
    public SectionMeasurement Measurement { get; private set; } = null!;

    /// <summary>Photograph.</summary>
    public Photograph Photograph { get; private set; } = null!;

    /// <inheritdoc/>
    protected override ExaminationMethod Examination => ExaminationMethod.Macroscopic;

    /// <inheritdoc/>
    protected override FindingOrigin Origin => FindingOrigin.Examination;

    /// <inheritdoc/>
    protected override SeamPlace? Place => new(Cut.JointCode, Cut.PassNumber, Cut.Angle, null);

    /// <summary>Records a section; the verdict follows from the measured size and the limit.</summary>
    public static Outcome<SectionExamination> Record(
        Guid id,
        TestFacts facts,
        SectionCut cut,
        SectionMeasurement measurement,
        Photograph photograph,
        string? remark,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(cut);
        ArgumentNullException.ThrowIfNull(measurement);
        ArgumentNullException.ThrowIfNull(photograph);
        var checks = CheckBeginning(facts, StepKind.Section, remark, actor);
        CheckCut(checks, facts, cut, measurement);
        CheckSize(checks, measurement);
        var used = checks.Take(
            facts,
            new NeededInstrument(Instrument, InstrumentKind.Length, null, "mm")
        );
        if (!checks.AllHold)
        {
            return checks.Refusals;
        }

        var (verdict, sentence) = Judge(measurement);
        var section = new SectionExamination(id)
        {
            Cut = cut,
            Measurement = measurement,
            Photograph = photograph,
            Instruments = used,
            Remark = string.IsNullOrWhiteSpace(remark) ? null : remark.Trim(),
            Verdict = verdict,
            VerdictSentence = sentence,
        };
        section.SetOrigin(facts.Vessel, facts.Step.Sequence, actor, at);
        section.Note(actor, at, "section recorded");
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

    /// <summary>The trade's words for an imperfection.</summary>
    public static string ImperfectionWord(Imperfection imperfection) =>
        imperfection switch
        {
            Imperfection.None => "no imperfection",
            Imperfection.Hook => "hook",
            Imperfection.Cavity => "cavity",
            Imperfection.JointRemnant => "joint remnant",
            Imperfection.IncompletePenetration => "incomplete penetration",
            Imperfection.Underfill => "underfill",
            Imperfection.ToeFlash => "toe flash",
            Imperfection.LinearMisalignment => "linear misalignment",
            Imperfection.Crack => "crack",
            _ => throw new ArgumentOutOfRangeException(
                nameof(imperfection),
                imperfection,
                "Unknown imperfection."
            ),
        };

    private static void CheckCut(
        Checks checks,
        TestFacts facts,
        SectionCut cut,
        SectionMeasurement measurement
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
            .Text(cut.Etchant, 80, "Name the etchant and the time", nameof(SectionCut.Etchant))
            .Text(
                cut.Magnification,
                80,
                "Give the magnification or the length of the scale",
                nameof(SectionCut.Magnification)
            )
            .Text(
                measurement.LimitSource,
                LongestText,
                "Name the standard or specification behind the limit, with its edition",
                nameof(SectionMeasurement.LimitSource)
            );

    private static void CheckSize(Checks checks, SectionMeasurement measurement)
    {
        if (measurement.Imperfection == Imperfection.None)
        {
            checks.That(
                measurement.Size is null,
                "size",
                "Nothing was found, so there is no size; take it out or choose the imperfection.",
                nameof(SectionMeasurement.Size)
            );
            return;
        }

        Reading.Between(checks, measurement.Size, 0, 200, "Size", nameof(SectionMeasurement.Size));
        Reading.Between(
            checks,
            measurement.SizeUncertainty,
            0,
            20,
            "Expanded uncertainty of the size",
            nameof(SectionMeasurement.SizeUncertainty)
        );
        if (measurement.Limit is not null)
        {
            Reading.Between(
                checks,
                measurement.Limit,
                0,
                200,
                "Limit",
                nameof(SectionMeasurement.Limit)
            );
        }
    }

    private static (Verdict Verdict, string Sentence) Judge(SectionMeasurement measurement)
    {
        var name = ImperfectionWord(measurement.Imperfection);
        if (measurement.Imperfection == Imperfection.None)
        {
            return (Engineering.Conformity.Verdict.Pass, "The section shows no imperfection.");
        }

        if (measurement.Limit is null || measurement.Imperfection == Imperfection.Crack)
        {
            return (
                Engineering.Conformity.Verdict.Fail,
                $"The section shows a {name} of {measurement.Size}; none is permitted."
            );
        }

        var judged = Comparison.AtMost(
            new Engineering.Conformity.Measured(
                measurement.Size!.InUnit(),
                "mm",
                measurement.SizeUncertainty!.InUnit()
            ),
            WrittenLimit.Parse(measurement.Limit.Digits, "mm")
        );
        return (judged.Verdict, $"The section shows a {name}: {judged.Sentence}");
    }
}
