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
)
{
    /// <summary>Phase that it holds in; the traverse is judged without its ramps.</summary>
    public WeldPhase Phase { get; init; } = WeldPhase.Traverse;

    /// <summary>Whether leaving it only warns.</summary>
    public bool IsWarning { get; init; }
}

/// <summary>Bounds of the phases as a person states them, in time stamps as logged; each not before the one before it.</summary>
/// <param name="ContactSeconds">The tool touches the work.</param>
/// <param name="DepthSeconds">It is at depth.</param>
/// <param name="TravelSeconds">It begins to travel.</param>
/// <param name="SteadySeconds">It has its speed.</param>
/// <param name="SteadyEndSeconds">It slows down.</param>
/// <param name="TravelEndSeconds">It stands.</param>
/// <param name="FreeSeconds">It is free of the work.</param>
public sealed record StatedBounds(
    double ContactSeconds,
    double DepthSeconds,
    double TravelSeconds,
    double SteadySeconds,
    double SteadyEndSeconds,
    double TravelEndSeconds,
    double FreeSeconds
);

/// <summary>What a run was meant to be, to judge its log by.</summary>
public sealed record EvaluationPlan
{
    public IReadOnlyList<ChannelWindow> Windows { get; init; } = [];

    /// <summary>Channels that are judged after a filter; their figures and phases are taken from the samples as logged.</summary>
    public IReadOnlyDictionary<LogChannel, SampleFilter> Filters { get; init; } =
        new Dictionary<LogChannel, SampleFilter>();

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

    /// <summary>Shortest length along the seam that counts, however short its time; none: only time counts.</summary>
    public Length? DebounceLength { get; init; }

    /// <summary>The phases as a person stated them; none: they are found.</summary>
    public StatedBounds? Bounds { get; init; }

    /// <summary>Longest return inside the window that does not end an excursion.</summary>
    public TimeSpan MergeGap { get; init; } = TimeSpan.FromSeconds(0.25);
}
