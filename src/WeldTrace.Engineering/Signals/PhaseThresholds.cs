using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Signals;

/// <summary>Levels by which the phases of a run are told apart. The defaults are common practice, no published source.</summary>
public sealed record PhaseThresholds
{
    /// <summary>Axial force from which the tool is taken to touch the work; more than zero.</summary>
    public Force ContactForce { get; init; } = Force.FromKilonewtons(0.5);

    /// <summary>Travel speed from which the tool is taken to travel; more than zero.</summary>
    public Speed TraverseSpeed { get; init; } = Speed.FromMillimetresPerMinute(8);

    /// <summary>How far above the deepest point the tool still counts as at depth; zero or more.</summary>
    public Length DepthTolerance { get; init; } = Length.FromMillimetres(0.02);

    /// <summary>How long travel has to last before it counts as a traverse and not as a jog; zero or more.</summary>
    public TimeSpan TravelHold { get; init; } = TimeSpan.FromSeconds(0.5);

    /// <summary>Travel speed from which a traverse is past its ramp; none: the whole traverse counts as steady.</summary>
    public Speed? SteadySpeed { get; init; }

    /// <summary>Longest stretch at either end of a traverse that may count as a ramp; zero or more.</summary>
    public TimeSpan LongestRamp { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Dwell after which travel is assumed when the log holds no travel speed; more than 0.2 s.</summary>
    public TimeSpan ProgrammedDwell { get; init; } = TimeSpan.FromSeconds(2);
}
