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
    public IEnumerable<LogColumn> Columns =>
        new[] { Time, Force, Depth, Travel }.OfType<LogColumn>();

    public static RunChannels Of(LogHeader header, EvaluationPlan plan)
    {
        var speed = Find(header, LogChannel.TravelSpeed);
        var angle = plan.Track is null ? null : Find(header, LogChannel.AxisAngle);
        return new RunChannels(
            Find(header, LogChannel.Time)
                ?? throw new ArgumentException("The log has no time.", nameof(header)),
            Find(header, LogChannel.AxialForce),
            Find(header, LogChannel.PlungeDepth),
            speed ?? angle,
            speed is not null ? SeamPositionSource.TravelSpeed
                : angle is not null ? SeamPositionSource.AxisAngle
                : plan.ProgrammedSpeed is not null ? SeamPositionSource.ProgrammedSpeed
                : null
        );
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
