using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>Follows the path by coordinates or by the axis angle beside that by the travel speed.</summary>
internal sealed class ClosureMeter
{
    private readonly LogColumn[] _columns;
    private readonly SeamPosition? _angle;
    private readonly CoordinatePath _path = new();
    private double[] _first = [];
    private double[] _second = [];

    private ClosureMeter(LogColumn[] columns, SeamPosition? angle) =>
        (_columns, _angle) = (columns, angle);

    /// <summary>None when the log shows the path in no second way.</summary>
    public static ClosureMeter? Of(LogHeader header, EvaluationPlan plan, RunChannels channels)
    {
        if (channels.Source != SeamPositionSource.TravelSpeed)
        {
            return null;
        }

        return plan.Track is { } track
            && RunChannels.Find(header, LogChannel.AxisAngle) is { } angle
                ? new([angle], SeamPosition.FromAxisAngle(track.Radius))
            : RunChannels.Find(header, LogChannel.X) is { } x
            && RunChannels.Find(header, LogChannel.Y) is { } y
                ? new([x, y], null)
            : null;
    }

    public void Add(
        LogFrames frames,
        ReadOnlySpan<double> seconds,
        IReadOnlyList<FramePiece> pieces
    )
    {
        var first = frames.Si(_columns[0], ref _first);
        var second = frames.Si(_columns[^1], ref _second);
        foreach (var piece in pieces)
        {
            if (piece.Phase == WeldPhase.Idle)
            {
                _angle?.Interrupt();
                _path.Interrupt();
                continue;
            }

            for (var i = piece.From; i < piece.To; i++)
            {
                if (_angle is null)
                {
                    _path.Add(first[i], second[i]);
                }
                else
                {
                    _angle.Add(seconds[i], first[i]);
                }
            }
        }
    }

    public PathClosure Complete(Length bySpeed) =>
        _angle is null
            ? new(SeamPositionSource.Coordinates, bySpeed, Length.FromMetres(_path.TravelledMetres))
            : new(SeamPositionSource.AxisAngle, bySpeed, _angle.Travelled);
}
