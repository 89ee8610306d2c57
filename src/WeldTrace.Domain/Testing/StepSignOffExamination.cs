using WeldTrace.Domain.Findings;
using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;
using WeldTrace.Domain.Vessels;
using WeldTrace.Engineering.Quantities;

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

    /// <summary>
    /// Methods by which a vessel was examined in the steps that stand as done: nothing was rejected, or a signed decision on the finding
    /// took the step as it is.
    /// </summary>
    /// <param name="vessel">Vessel.</param>
    /// <param name="signOffs">Its sign-offs; of a step that was repeated the last one counts.</param>
    public static IReadOnlyList<PlannedExamination> Examined(
        Vessel vessel,
        IEnumerable<StepSignOff> signOffs
    )
    {
        ArgumentNullException.ThrowIfNull(vessel);
        return
        [
            .. signOffs
                .Where(s => vessel.Step(s.StepSequence) is { IsDone: true })
                .GroupBy(s => s.StepSequence)
                .Select(step => step.MaxBy(s => s.At)?.Examination)
                .OfType<ExaminationReport>()
                .Select(e => e.Method)
                .Distinct(),
        ];
    }

    private Finding? FindingOn(
        TestFacts facts,
        IReadOnlyList<Flaw> rejected,
        Actor actor,
        DateTimeOffset at
    ) =>
        rejected.Count == 0
            ? null
            : Finding.Open(
                facts.Vessel,
                StepSequence,
                FindingOrigin.Examination,
                $"{Title}: {string.Join("; ", rejected.Select(f => f.Text))}",
                this,
                PlaceOf(rejected[0], facts.Design.Content),
                actor,
                at
            );

    // A flaw is told from the mark, a finding along the travel of a pass: of the first, since nobody sees which pass it lies in.
    private static SeamPlace PlaceOf(Flaw flaw, DesignContent design)
    {
        var pass = design.Joint(flaw.JointCode)!.Passes[0];
        return new SeamPlace(
            flaw.JointCode,
            pass.Number,
            pass.FromMark(Angle.FromDegrees(flaw.Angle.InUnit())),
            null
        );
    }

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
        if (isAsked && examination is not null)
        {
            CheckMethod(checks, facts, examination.Method);
        }
    }

    // The last steps of examination are kept for the planned methods that are still missing.
    private static void CheckMethod(Checks checks, TestFacts facts, PlannedExamination method)
    {
        var missing = facts.NotYetExamined;
        var left = facts.Vessel.Steps.Count(s => s.Kind == StepKind.Examination && !s.IsDone);
        checks.That(
            missing.Count == 0 || missing.Contains(method) || left > missing.Count,
            "method",
            $"The design still asks for a {string.Join(" and a ", missing.Select(ExaminationPlan.Word))} examination, and no further step is left for it. Make that one here.",
            nameof(ExaminationReport.Method),
            ExaminationPlan.EachMethodSource
        );
    }

    private static void CheckExamined(Checks checks, TestFacts facts)
    {
        var missing = facts.NotYetExamined;
        checks.That(
            missing.Count == 0,
            "examination",
            $"Planned for every vessel and not recorded for this one: {string.Join(", ", missing.Select(ExaminationPlan.Word))} examination. A vessel is accepted when each planned examination is recorded.",
            null,
            ExaminationPlan.EachMethodSource
        );
    }
}
