namespace WeldTrace.Web.Demo;

/// <summary>Where the tool of an invented run is and how fast it travels, by time. Times in s, lengths in mm, speeds in mm/s.</summary>
internal sealed class DemoMotion
{
    private const double Clearance = 5;
    private const double ApproachTime = 2;
    private const double PlungeTime = 8;
    private const double DwellTime = 3;
    private const double RampTime = 1.5;
    private const double EndDwellTime = 1;
    private const double RetractTime = 2;

    private readonly double _speed;
    private readonly double _depth;
    private readonly double _stopTime;
    private readonly double _steadyTime;

    public DemoMotion(DemoRun run)
    {
        (_speed, _depth) = (run.TravelSpeed.MillimetresPerSecond, run.PlungeDepth.Millimetres);
        _stopTime = run.AbortAt is null ? RampTime : 0.2;
        _steadyTime = Math.Max(0, (run.Path.Millimetres / _speed) - ((RampTime + _stopTime) / 2));
    }

    public static double Contact => ApproachTime;

    public static double TravelStart => ApproachTime + PlungeTime + DwellTime;

    public double TravelEnd => TravelStart + RampTime + _steadyTime + _stopTime;

    public double RetractStart => TravelEnd + EndDwellTime;

    public double ToolFree => RetractStart + (RetractTime * _depth / (_depth + Clearance));

    public double End => RetractStart + RetractTime + 1;

    /// <summary>Height above the surface, negative inside the work.</summary>
    public double Height(double time) =>
        time < ApproachTime ? Clearance * (1 - (time / ApproachTime))
        : time < ApproachTime + PlungeTime ? -_depth * (time - ApproachTime) / PlungeTime
        : time < RetractStart ? -_depth
        : Math.Min(
            Clearance,
            -_depth + ((time - RetractStart) / RetractTime * (_depth + Clearance))
        );

    public double Speed(double time) =>
        _speed
        * Math.Clamp(
            Math.Min((time - TravelStart) / RampTime, (TravelEnd - time) / _stopTime),
            0,
            1
        );

    public double Travelled(double time)
    {
        var ramp = Math.Clamp(time - TravelStart, 0, RampTime);
        var steady = Math.Clamp(time - TravelStart - RampTime, 0, _steadyTime);
        var stop = Math.Clamp(time - TravelEnd + _stopTime, 0, _stopTime);
        return _speed
            * ((ramp * ramp / RampTime / 2) + steady + (stop - (stop * stop / _stopTime / 2)));
    }
}
