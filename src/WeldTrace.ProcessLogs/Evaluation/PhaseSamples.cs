using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The channels that tell the phases, in SI, frame by frame in the same memory.</summary>
internal sealed class PhaseSamples(RunChannels channels, AxisTravelSpeed? axis)
{
    private double[] _seconds = [];
    private double[] _newtons = [];
    private double[] _metres = [];
    private double[] _speeds = [];

    public ToolSamples Of(LogFrames frames)
    {
        var seconds = Si(frames, channels.Time, ref _seconds);
        return new ToolSamples(
            seconds,
            Si(frames, channels.Force, ref _newtons),
            Si(frames, channels.Depth, ref _metres),
            Speeds(seconds, Si(frames, channels.Travel, ref _speeds))
        );
    }

    private static Span<double> Si(LogFrames frames, LogColumn? column, ref double[] room)
    {
        room = room.Length < frames.Count ? new double[frames.Count] : room;
        var values = room.AsSpan(0, frames.Count);
        if (column is null)
        {
            values.Fill(double.NaN);
        }
        else
        {
            frames.CopySi(column, values);
        }

        return values;
    }

    private Span<double> Speeds(ReadOnlySpan<double> seconds, Span<double> travel)
    {
        for (var i = 0; i < travel.Length; i++)
        {
            travel[i] = axis?.Add(seconds[i], travel[i]) ?? Math.Abs(travel[i]);
        }

        return travel;
    }
}
