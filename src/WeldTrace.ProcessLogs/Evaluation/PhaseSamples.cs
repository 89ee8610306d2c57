using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The channels that tell the phases, in SI, frame by frame in the same memory.</summary>
internal sealed class PhaseSamples(RunChannels channels, AxisTravelSpeed? axis)
{
    private double[] _seconds = [];
    private double[] _newtons = [];
    private double[] _metres = [];
    private double[] _speeds = [];
    private double[] _across = [];
    private readonly CoordinatePath _path = new();

    public ToolSamples Of(LogFrames frames)
    {
        var seconds = Si(frames, channels.Time, ref _seconds);
        return new ToolSamples(
            seconds,
            Si(frames, channels.Force, ref _newtons),
            Si(frames, channels.Depth, ref _metres),
            Speeds(frames, seconds, Si(frames, channels.Travel, ref _speeds))
        );
    }

    private static Span<double> Si(LogFrames frames, LogColumn? column, ref double[] room)
    {
        if (column is not null)
        {
            return frames.Si(column, ref room);
        }

        var values = frames.Room(ref room);
        values.Fill(double.NaN);
        return values;
    }

    private Span<double> Speeds(LogFrames frames, ReadOnlySpan<double> seconds, Span<double> travel)
    {
        ReadOnlySpan<double> across = channels.Across is { } column
            ? frames.Si(column, ref _across)
            : [];
        for (var i = 0; i < travel.Length; i++)
        {
            var moved = across.IsEmpty ? travel[i] : _path.Add(travel[i], across[i]);
            travel[i] = axis?.Add(seconds[i], moved) ?? Math.Abs(moved);
        }

        return travel;
    }
}
