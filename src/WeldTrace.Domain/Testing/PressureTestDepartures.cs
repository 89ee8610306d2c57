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
