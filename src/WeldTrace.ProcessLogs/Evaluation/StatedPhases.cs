using WeldTrace.Engineering.Signals;
using WeldTrace.ProcessLogs.Charts;

namespace WeldTrace.ProcessLogs.Evaluation;

/// <summary>The phases of a log whose bounds a person stated.</summary>
internal static class StatedPhases
{
    public static RunPhases Of(ProcessLog log, LogColumn time, StatedBounds bounds)
    {
        using var samples = new SampleAccess(log);
        var header = log.Header;
        var end = new LogPoint(header.SampleCount, header.StartSeconds + header.DurationSeconds);
        LogPoint At(double seconds) => new(samples.FirstNotBefore(time, seconds), seconds);
        LogPoint Before(double seconds) => new(Math.Max(0, At(seconds).Index - 1), seconds);
        var pass = new ToolPass
        {
            AreBoundsStated = true,
            Contact = At(bounds.ContactSeconds),
            DwellStart = At(bounds.DepthSeconds),
            TraverseStart = At(bounds.TravelSeconds),
            SteadyStart = At(bounds.SteadySeconds),
            SteadyEnd = Before(bounds.SteadyEndSeconds),
            TraverseEnd = Before(bounds.TravelEndSeconds),
            ExitStart = At(bounds.TravelEndSeconds),
            ToolFree = bounds.FreeSeconds >= end.TimeSeconds ? null : At(bounds.FreeSeconds),
        };
        return RunPhases.Stated(pass, new LogPoint(0, header.StartSeconds), end);
    }
}
