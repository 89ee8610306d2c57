using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.ProcessLogs;

/// <summary>Window of one channel, in the SI unit named; a missing limit is not judged.</summary>
/// <param name="Channel">The channel judged.</param>
/// <param name="LowerSi">Lower limit; inside when equal.</param>
/// <param name="UpperSi">Upper limit; inside when equal.</param>
/// <param name="SiUnit">Unit of both, as the quantity's <c>SiUnit</c> says: 1/s, m/s, N, N.m, m, K.</param>
public sealed record ChannelWindow(
    LogChannel Channel,
    double? LowerSi,
    double? UpperSi,
    string SiUnit
);

/// <summary>What a run was meant to be, to judge its log by.</summary>
public sealed record EvaluationPlan
{
    public IReadOnlyList<ChannelWindow> Windows { get; init; } = [];

    /// <summary>Planned path, overlap and ramps included; none: completeness is not judged.</summary>
    public Length? PlannedPath { get; init; }

    /// <summary>The circle of the pass; none for a straight seam or when unknown.</summary>
    public CircularTrack? Track { get; init; }

    /// <summary>Planned overlap past the start of a circular pass; none: not judged.</summary>
    public Length? PlannedOverlap { get; init; }

    /// <summary>How much shorter than planned the path may be and still be complete.</summary>
    public Length PathTolerance { get; init; } = Length.FromMillimetres(2);

    /// <summary>Set point of the travel speed: tells ramps from the steady traverse, and stands in for a missing travel speed.</summary>
    public Speed? ProgrammedSpeed { get; init; }

    /// <summary>Share of the set point from which the traverse is past its ramp.</summary>
    public double SteadySpeedShare { get; init; } = 0.95;

    public PhaseThresholds Thresholds { get; init; } = new();

    /// <summary>Shortest stretch outside a window that counts as an excursion.</summary>
    public TimeSpan Debounce { get; init; } = TimeSpan.FromSeconds(0.5);

    /// <summary>Longest return inside the window that does not end an excursion.</summary>
    public TimeSpan MergeGap { get; init; } = TimeSpan.FromSeconds(0.25);
}
