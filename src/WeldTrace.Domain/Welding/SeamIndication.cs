using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.Sectioning;
using WeldTrace.Domain.Testing;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

/// <summary>What a place on the seam was recorded as.</summary>
public enum SeamIndicationKind
{
    /// <summary>A section was cut here.</summary>
    Section,

    /// <summary>An examination found a flaw here.</summary>
    Flaw,

    /// <summary>Bubbles rose here in a leak test.</summary>
    Bubble,

    /// <summary>Somebody reported a finding here.</summary>
    Finding,
}

/// <summary>A place on a seam that another record than the run speaks of.</summary>
/// <param name="Kind">What it was recorded as.</param>
/// <param name="What">What was seen, in the words of the record.</param>
/// <param name="Record">The record.</param>
/// <param name="Along">Place along the travel from the start of the pass, 0° to 540°.</param>
public sealed record SeamIndication(
    SeamIndicationKind Kind,
    string What,
    RecordName Record,
    Angle Along
)
{
    /// <summary>The word for the kind.</summary>
    public string Word =>
        Kind switch
        {
            SeamIndicationKind.Section => "section",
            SeamIndicationKind.Flaw => "flaw",
            SeamIndicationKind.Bubble => "bubbles",
            _ => "finding",
        };
}

/// <summary>What the other records of a vessel say of the seam of a run. Withdrawn tests say nothing.</summary>
/// <param name="Run">Run.</param>
/// <param name="Pass">Its pass as designed.</param>
public sealed record IndicationsOnSeam(WeldRun Run, PassPlan Pass)
{
    /// <summary>All of them, in the order of the travel.</summary>
    /// <param name="sections">Sections of the vessel.</param>
    /// <param name="signOffs">Its signed steps, examinations among them.</param>
    /// <param name="leakTests">Its leak tests.</param>
    /// <param name="findings">Its findings; those of a test or a log stand with that record already.</param>
    public IReadOnlyList<SeamIndication> Of(
        IEnumerable<SectionExamination> sections,
        IEnumerable<StepSignOff> signOffs,
        IEnumerable<LeakTest> leakTests,
        IEnumerable<Finding> findings
    ) =>
        [
            .. sections
                .SelectMany(Cuts)
                .Concat(signOffs.SelectMany(Flaws))
                .Concat(leakTests.SelectMany(Bubbles))
                .Concat(findings.SelectMany(Reported))
                .OrderBy(i => i.Along),
        ];

    private IEnumerable<SeamIndication> Cuts(SectionExamination section) =>
        section.Withdrawal is null && IsHere(section.Cut.JointCode, section.Cut.PassNumber)
            ?
            [
                new(
                    SeamIndicationKind.Section,
                    $"{(section.Cut.IsMicroscopic == true ? "microscopic" : "macroscopic")} section{(section.Cut.Specimen is { Length: > 0 } mark ? $" {mark}" : "")}, {TestRecord.VerdictWord(section.Verdict)}",
                    RecordName.Of(section),
                    section.Cut.Angle
                ),
            ]
            : [];

    private IEnumerable<SeamIndication> Flaws(StepSignOff step) =>
        (step.Examination?.Flaws ?? [])
            .Where(flaw => IsHere(flaw.JointCode, null))
            .Select(flaw => new SeamIndication(
                SeamIndicationKind.Flaw,
                $"{ExaminationPlan.Word(step.Examination!.Method)}: {flaw.What}, {flaw.Size}{(flaw.IsRejectable || flaw.IsCrackLike ? ", rejected" : "")}",
                RecordName.Of(step),
                Pass.FromMark(Angle.FromDegrees(flaw.Angle.InUnit()))
            ));

    private IEnumerable<SeamIndication> Bubbles(LeakTest test) =>
        test.Withdrawal is null
            ? (test.Bubble?.Marked ?? [])
                .Where(place => IsHere(place.JointCode, null))
                .Select(place => new SeamIndication(
                    SeamIndicationKind.Bubble,
                    "bubbles rose under pressure",
                    RecordName.Of(test),
                    Pass.FromMark(Angle.FromDegrees(place.Angle.InUnit()))
                ))
            : [];

    private IEnumerable<SeamIndication> Reported(Finding finding) =>
        finding
            is {
                Origin: FindingOrigin.Report or FindingOrigin.Containment,
                Place: { Start: { } start } place
            }
        && IsHere(place.JointCode, place.PassNumber)
            ? [new(SeamIndicationKind.Finding, finding.Description, RecordName.Of(finding), start)]
            : [];

    private bool IsHere(string? joint, int? pass) =>
        joint == Run.JointCode && (pass is null || pass == Run.PassNumber);
}
