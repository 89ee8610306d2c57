using WeldTrace.Domain.Records;
using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Testing;

// Steps out of the plan and what was decided about them.
public sealed partial class PressureTest
{
    /// <summary>Decides what follows from a step out of the plan: the test goes on with the readings as they are, or ends and fails.</summary>
    /// <param name="goesOn">Whether it goes on.</param>
    /// <param name="reason">Why; 1 to 400 characters.</param>
    /// <param name="design">Design with the ladder.</param>
    /// <param name="actor">Who decides; not whoever tests.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome Decide(
        bool goesOn,
        string reason,
        VesselDesign design,
        Actor actor,
        DateTimeOffset at
    )
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(actor);
        var checks = new Checks()
            .Role(actor, People.Role.Engineer, People.Role.QualityManager)
            .Text(reason, LongestText, "Give the reason", nameof(DepartureDecision.Reason))
            .That(
                actor.PersonId != InspectorId,
                "second-person",
                "You made this test; somebody else decides about its leaving the plan."
            )
            .That(
                OpenDeparture is not null,
                "state",
                "No step out of the plan waits for a decision."
            );
        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        var open = OpenDeparture!;
        var decision = new DepartureDecision(
            goesOn,
            reason.Trim(),
            actor.PersonId,
            actor.PrintedName,
            at
        );
        Departures =
        [
            .. Departures!.Select(d => d.Decision is null ? d with { Decision = decision } : d),
        ];
        var plan = design.Content.Pressures;
        var stage = Ladder(plan)[open.StageNumber - 1];
        var result = JudgeReading(stage, open.Reading, plan);
        Take(
            stage,
            open.Reading,
            goesOn ? result.Verdict : Engineering.Conformity.Verdict.Fail,
            goesOn
                ? $"{result.Sentence} Left the plan, accepted by {actor.PrintedName}: {open.Sentence}"
                : open.Sentence,
            plan,
            actor,
            at
        );
        return Outcome.Accepted;
    }

    /// <summary>The last stage, when its hold did not pass and may be repeated; null when there is none such, or the ladder was exceeded.</summary>
    /// <param name="plan">Pressures of the design.</param>
    public StageResult? HoldToRepeat(PressurePlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return
            !IsSealed
            && Withdrawal is null
            && OpenDeparture is null
            && Stages is [.., { Verdict: not Engineering.Conformity.Verdict.Pass } last]
            && last.Stage.Kind
                is PressureStageKind.OperatingHold
                    or PressureStageKind.Proof
                    or PressureStageKind.LeakCheck
            && StageEvaluation.HighestBar(last.Reading) is { } highest
            && !PlanDeparture.Exceeds(
                highest,
                plan.HighestOrdinary.Bar * (1 + (double)plan.TargetTolerance)
            )
            && !WasEnded(Stages.Count)
            ? last
            : null;
    }

    /// <summary>Decides that a hold which did not pass is repeated; its first result stays in the record, and is named with the second.</summary>
    /// <param name="reason">Why; 1 to 400 characters.</param>
    /// <param name="design">Design with the ladder.</param>
    /// <param name="actor">Who decides; not whoever tests.</param>
    /// <param name="at">UTC instant.</param>
    public Outcome RepeatHold(string reason, VesselDesign design, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(actor);
        var failed = HoldToRepeat(design.Content.Pressures);
        var checks = new Checks()
            .Role(actor, People.Role.Engineer, People.Role.QualityManager)
            .Text(reason, LongestText, "Give the reason", nameof(DepartureDecision.Reason))
            .That(
                actor.PersonId != InspectorId,
                "second-person",
                "You made this test; somebody else decides that a hold of it is repeated."
            )
            .That(
                failed is not null,
                "state",
                "No hold of this test may be repeated: the last stage passed, was no hold, or went above the ladder; or the test is signed."
            );
        if (!checks.AllHold)
        {
            return checks.ToOutcome();
        }

        Departures =
        [
            .. Departures ?? [],
            new PlanDeparture(
                Stages.Count,
                DepartureKind.HoldRepeated,
                failed!.Sentence,
                failed.Reading,
                failed.At,
                failed.By,
                new DepartureDecision(true, reason.Trim(), actor.PersonId, actor.PrintedName, at)
            ),
        ];
        Note(actor, at, $"hold of pressure stage {Stages.Count} to be repeated", reason.Trim());
        Stages = [.. Stages.SkipLast(1)];
        (Verdict, VerdictSentence) = (null, "");
        return Outcome.Accepted;
    }

    // Whoever ended the test after a step out of the plan has decided already.
    private bool WasEnded(int stageNumber) =>
        Departures?.Any(d => d.StageNumber == stageNumber && d.Decision is { GoesOn: false })
        == true;

    // A repeated hold never stands by itself.
    private string WithRepeats(int stageNumber, string sentence)
    {
        var repeats = (Departures ?? [])
            .Where(d => d.StageNumber == stageNumber && d.Kind == DepartureKind.HoldRepeated)
            .ToList();
        return repeats.Count == 0
            ? sentence
            : $"{sentence} Hold repeated by decision of {repeats[^1].Decision!.By}; before that: {string.Join(" ", repeats.Select(r => r.Sentence))}";
    }

    private void Stand(
        int stageNumber,
        IReadOnlyList<(DepartureKind Kind, string Sentence)> found,
        StageReading reading,
        Actor actor,
        DateTimeOffset at
    )
    {
        var sentence = string.Join(" ", found.Select(d => d.Sentence));
        Departures =
        [
            .. Departures ?? [],
            new PlanDeparture(
                stageNumber,
                found[0].Kind,
                sentence,
                reading,
                at,
                actor.PrintedName,
                null
            ),
        ];
        Note(actor, at, $"pressure stage {stageNumber} left the plan", sentence);
    }
}
