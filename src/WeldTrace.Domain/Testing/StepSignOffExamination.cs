using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;

namespace WeldTrace.Domain.Testing;

// What an examination adds to a signed-off step.
public sealed partial class StepSignOff
{
    /// <summary>What an examination looked at and found; null at other steps, and at those signed before it was kept.</summary>
    public ExaminationReport? Examination { get; private set; }

    /// <summary>Statement, examination and remark in one.</summary>
    public string Text =>
        string.Join(
            ' ',
            new[]
            {
                Statement,
                Examination?.Sentence,
                Remark is null ? null : $"Remark: {Remark}",
            }.OfType<string>()
        );

    private Finding? FindingOn(
        Vessel vessel,
        IReadOnlyList<Flaw> rejected,
        Actor actor,
        DateTimeOffset at
    ) =>
        rejected.Count == 0
            ? null
            : Finding.Open(
                vessel,
                StepSequence,
                FindingOrigin.Examination,
                $"{Title}: {string.Join("; ", rejected.Select(f => f.Text))}",
                this,
                new SeamPlace(
                    rejected[0].JointCode,
                    null,
                    Engineering.Quantities.Angle.FromDegrees(rejected[0].Angle.InUnit()),
                    null
                ),
                actor,
                at
            );

    private static void CheckExamination(
        Checks checks,
        TestFacts facts,
        ExaminationReport? examination
    )
    {
        var isAsked = facts.Step.Kind == StepKind.Examination;
        checks.That(
            isAsked == examination is not null,
            "examination",
            isAsked
                ? "Say how it was examined, what was examined and what was not, and every flaw."
                : "Only an examination has flaws to list.",
            nameof(Examination)
        );
        examination?.Check(checks, facts.Design.Content);
    }
}
