using WeldTrace.Domain.VesselDesigns;

namespace WeldTrace.Domain.Vessels;

/// <summary>State of a step on a vessel's route.</summary>
public enum StepState
{
    /// <summary>An earlier step isn't done.</summary>
    Waiting,

    /// <summary>May be begun.</summary>
    Ready,

    /// <summary>Begun, not done.</summary>
    InProgress,

    /// <summary>Done and good.</summary>
    Passed,

    /// <summary>Done and not good; a finding says what happens.</summary>
    Failed,

    /// <summary>Not good, and accepted by a signed disposition.</summary>
    Waived,
}

/// <summary>A step on the route of one vessel.</summary>
/// <param name="Sequence">10, 20, ... rising.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Title">What is done.</param>
/// <param name="JointCode">Joint, for a weld or a section.</param>
/// <param name="PassNumber">Pass, for a weld.</param>
/// <param name="Stop">Hold or witness point.</param>
/// <param name="State">State.</param>
/// <param name="DoneBy">Printed name of whoever finished it.</param>
/// <param name="DoneAt">UTC instant at which it was finished.</param>
/// <param name="OpenedAgainAt">UTC instant at which it was last to be done again; what was recorded before doesn't pass it. Null when it never was.</param>
public sealed record RouteStep(
    int Sequence,
    StepKind Kind,
    string Title,
    string? JointCode,
    int? PassNumber,
    StopPoint Stop,
    StepState State,
    string? DoneBy,
    DateTimeOffset? DoneAt,
    DateTimeOffset? OpenedAgainAt = null
)
{
    /// <summary>Whether what the step shows depends on the steps before it: a test, an examination, or the acceptance.</summary>
    public bool IsJudgement => Kind is not (StepKind.Weld or StepKind.Preparation);

    /// <summary>Whether the next step may follow.</summary>
    public bool IsDone => State is StepState.Passed or StepState.Waived;

    /// <summary>The word for a state, as shown.</summary>
    public static string StateWord(StepState state) =>
        state switch
        {
            StepState.Waiting => "waiting",
            StepState.Ready => "ready",
            StepState.InProgress => "in progress",
            StepState.Passed => "passed",
            StepState.Failed => "failed",
            StepState.Waived => "waived",
            _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Unknown state."),
        };
}

/// <summary>A component built into a vessel.</summary>
/// <param name="Name">What it is, for instance <c>shell</c> or <c>end, port side</c>.</param>
/// <param name="Serial">Serial or batch mark.</param>
/// <param name="MaterialLotId">Lot it was cut from.</param>
/// <param name="MaterialLotNumber">Number of that lot.</param>
/// <param name="CastNumber">Cast number of that lot.</param>
/// <param name="ComponentId">Record of the component; null in vessels that were planned from bare lots.</param>
public sealed record Component(
    string Name,
    string Serial,
    Guid MaterialLotId,
    string MaterialLotNumber,
    string CastNumber,
    Guid? ComponentId = null
);
