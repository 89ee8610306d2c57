namespace WeldTrace.Engineering.Signals;

/// <summary>What the phases of a run are judged by, at one moment. NaN stands for a channel that is not logged.</summary>
/// <param name="TimeSeconds">Time stamp in s, finite, increasing.</param>
/// <param name="ForceNewtons">Axial force in N, positive when the tool presses on the work.</param>
/// <param name="DepthMetres">Depth in m below the surface of the work, positive inside the work.</param>
/// <param name="SpeedMetresPerSecond">Travel speed in m/s, positive in either direction.</param>
public readonly record struct ToolSample(
    double TimeSeconds,
    double ForceNewtons,
    double DepthMetres,
    double SpeedMetresPerSecond
);
