using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The columns that phases and positions are taken from.</summary>
internal sealed record RunChannels(
    LogColumn Time,
    LogColumn? Force,
    LogColumn? Depth,
    LogColumn? Travel,
    SeamPositionSource? Source
)
{
    /// <summary>The second coordinate, when the position is taken from two; the first one is the travel.</summary>
    public LogColumn? Across { get; init; }

    public static RunChannels Of(LogHeader header, EvaluationPlan plan)
    {
        var speed = Find(header, LogChannel.TravelSpeed);
        var angle = plan.Track is null ? null : Find(header, LogChannel.AxisAngle);
        var (x, y) = (Find(header, LogChannel.X), Find(header, LogChannel.Y));
        var isPlane = speed is null && angle is null && x is not null && y is not null;
        return new RunChannels(
            Find(header, LogChannel.Time)
                ?? throw new ArgumentException("The log has no time.", nameof(header)),
            Find(header, LogChannel.AxialForce),
            Find(header, LogChannel.PlungeDepth),
            speed ?? angle ?? (isPlane ? x : null),
            speed is not null ? SeamPositionSource.TravelSpeed
                : angle is not null ? SeamPositionSource.AxisAngle
                : isPlane ? SeamPositionSource.Coordinates
                : plan.ProgrammedSpeed is not null ? SeamPositionSource.ProgrammedSpeed
                : null
        )
        {
            Across = isPlane ? y : null,
        };
    }

    public static LogColumn? Find(LogHeader header, LogChannel channel) =>
        header.Columns.FirstOrDefault(column => column.Channel == channel);

    /// <summary>Distance along the seam from the chosen source; none when there is none.</summary>
    public SeamPosition? Position(EvaluationPlan plan) =>
        Source switch
        {
            SeamPositionSource.TravelSpeed => SeamPosition.FromTravelSpeed(),
            SeamPositionSource.AxisAngle => SeamPosition.FromAxisAngle(plan.Track!.Radius),
            SeamPositionSource.ProgrammedSpeed => SeamPosition.FromProgrammedSpeed(
                plan.ProgrammedSpeed!.Value
            ),
            _ => null,
        };
}
