using WeldTrace.Domain.Records;

namespace WeldTrace.Domain.Vessels;

// The steps of the vessel's route.
public sealed partial class Vessel
{
    /// <summary>Begins a step that is ready.</summary>
    public Outcome BeginStep(int sequence, Actor actor, DateTimeOffset at)
    {
        var outcome = CheckStep(sequence, StepState.Ready).ToOutcome();
        if (outcome.IsAccepted)
        {
            Replace(Step(sequence)! with { State = StepState.InProgress });
            State = State == VesselState.Planned ? VesselState.InWork : State;
            Note(actor, at, $"step {sequence} begun");
        }

        return outcome;
    }

    /// <summary>Finishes a step that is ready or in progress; the next one becomes ready.</summary>
    public Outcome PassStep(int sequence, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var outcome = CheckStep(sequence, StepState.Ready, StepState.InProgress).ToOutcome();
        if (outcome.IsAccepted)
        {
            Finish(Step(sequence)!, StepState.Passed, actor, at);
            Note(actor, at, $"step {sequence} passed");
        }

        return outcome;
    }

    /// <summary>Finishes a step that did not turn out well; a finding follows.</summary>
    public Outcome FailStep(int sequence, Actor actor, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(actor);
        var outcome = CheckStep(sequence, StepState.Ready, StepState.InProgress).ToOutcome();
        if (outcome.IsAccepted)
        {
            Replace(
                Step(sequence)! with
                {
                    State = StepState.Failed,
                    DoneBy = actor.PrintedName,
                    DoneAt = at,
                }
            );
            State = State == VesselState.Planned ? VesselState.InWork : State;
            Note(actor, at, $"step {sequence} failed");
        }

        return outcome;
    }

    internal void WaiveStep(int sequence, Actor actor, DateTimeOffset at, string reason)
    {
        if (Step(sequence) is { State: StepState.Failed } step)
        {
            Finish(step, StepState.Waived, actor, at);
            Note(actor, at, $"step {sequence} waived", reason);
        }
    }

    internal void ReopenStep(int sequence, Actor actor, DateTimeOffset at, string reason)
    {
        if (Step(sequence) is not null)
        {
            Steps = [.. Steps.Select(s => OpenAgain(s, sequence, at))];
            Note(actor, at, $"step {sequence} opened again", reason);
        }
    }

    /// <summary>The step that welds a pass; null when the route has none.</summary>
    /// <param name="jointCode">Joint.</param>
    /// <param name="passNumber">Pass.</param>
    public RouteStep? WeldStepOf(string jointCode, int passNumber) =>
        Steps.FirstOrDefault(s =>
            s.Kind == VesselDesigns.StepKind.Weld
            && s.JointCode == jointCode
            && s.PassNumber == passNumber
        );

    // No step of the route is begun by a repair, yet the vessel tells of it, so that two can't begin at once.
    internal void BeginRepair(string finding, Actor actor, DateTimeOffset at) =>
        Note(actor, at, $"repair of {finding} begun");

    // After a repair every test and examination after the weld is done anew; a weld stays as it is.
    internal void OpenTestsAgain(
        int welded,
        int failed,
        Actor actor,
        DateTimeOffset at,
        string reason
    )
    {
        Steps =
        [
            .. Steps.Select(s =>
                s.IsJudgement
                && s.Sequence > welded
                && (
                    s.State is StepState.Passed or StepState.Waived or StepState.InProgress
                    || s.Sequence == failed
                )
                    ? Undone(s, StepState.Waiting, at)
                : s.Sequence > welded && s.State == StepState.Ready
                    ? s with
                    {
                        State = StepState.Waiting,
                    }
                : s
            ),
        ];
        if (NextStep is { State: StepState.Waiting } next)
        {
            Replace(next with { State = StepState.Ready });
        }

        Note(actor, at, $"tests after step {welded} opened again", reason);
    }

    // What was tested before a step is done again says nothing about the vessel after it.
    private static RouteStep OpenAgain(RouteStep step, int sequence, DateTimeOffset at) =>
        step switch
        {
            _ when step.Sequence == sequence => Undone(step, StepState.Ready, at),
            _ when step.Sequence < sequence => step,
            { IsJudgement: true, State: not (StepState.Waiting or StepState.Failed) } => Undone(
                step,
                StepState.Waiting,
                at
            ),
            { State: StepState.Ready } => step with { State = StepState.Waiting },
            _ => step,
        };

    private static RouteStep Undone(RouteStep step, StepState state, DateTimeOffset at) =>
        step with
        {
            State = state,
            DoneBy = null,
            DoneAt = null,
            OpenedAgainAt = at,
        };

    private Checks CheckStep(int sequence, params StepState[] from)
    {
        var step = Step(sequence);
        return new Checks()
            .That(step is not null, "step", $"The route of {Serial} has no step {sequence}.")
            .That(
                !IsFinal,
                "state",
                $"{Serial} is {StateWord(State)}; nothing more is recorded on its route."
            )
            .That(
                step is null || from.Contains(step.State),
                "F1",
                step is null
                    ? ""
                    : $"Step {sequence} of {Serial} is {RouteStep.StateWord(step.State)}; {(NextStep is { } next ? $"step {next.Sequence} comes next" : "the route is done")}."
            );
    }

    private void Finish(RouteStep step, StepState state, Actor actor, DateTimeOffset at)
    {
        Replace(step with { State = state, DoneBy = actor.PrintedName, DoneAt = at });
        if (NextStep is { State: StepState.Waiting } next)
        {
            Replace(next with { State = StepState.Ready });
        }

        State = State switch
        {
            VesselState.OnHold or VesselState.Scrapped => State,
            _ => NextStep is null ? WhenDone : VesselState.InWork,
        };
    }

    private void Replace(RouteStep step) =>
        Steps = [.. Steps.Select(s => s.Sequence == step.Sequence ? step : s)];
}
