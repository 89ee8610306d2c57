using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;
using WeldTrace.ProcessLogs.Evaluation;

namespace WeldTrace.ProcessLogs;

public enum RunCompletion
{
    /// <summary>The tool did not travel in the work.</summary>
    NoTraverse,

    /// <summary>Shorter than planned, or more than one stay in the work.</summary>
    Interrupted,

    /// <summary>The whole planned path in one stay.</summary>
    Complete,

    /// <summary>One stay, and no planned path to compare with.</summary>
    NotJudged,
}

/// <summary>A stretch of a phase in which a channel was outside its window.</summary>
public sealed record ChannelExcursion
{
    public required LogChannel Channel { get; init; }

    public required string Column { get; init; }

    public required ExcursionSide Side { get; init; }

    /// <summary>Phase of the window that it left.</summary>
    public required WeldPhase Phase { get; init; }

    /// <summary>Whether the window that it left only warns.</summary>
    public required bool IsWarning { get; init; }

    /// <summary>Time stamps as logged.</summary>
    public required double StartSeconds { get; init; }

    public required double EndSeconds { get; init; }

    /// <summary>Positions along the seam from first contact.</summary>
    public required Length Start { get; init; }

    public required Length End { get; init; }

    /// <summary>Angles on the track; none when the pass has no circle.</summary>
    public required Angle? StartAngle { get; init; }

    public required Angle? EndAngle { get; init; }

    public required double ExtremeSi { get; init; }

    public required double ExtremeSeconds { get; init; }

    public required double LimitSi { get; init; }

    public required string SiUnit { get; init; }

    public TimeSpan Duration =>
        TimeSpan.FromMicroseconds(Math.Round((EndSeconds - StartSeconds) * 1e6));

    public Length LengthAlongSeam => End - Start;
}

/// <summary>Statistics of one column in one phase, in the SI unit named; percentiles only of the steady traverse.</summary>
public sealed record PhaseStatistics
{
    public required int Ordinal { get; init; }

    public required LogChannel Channel { get; init; }

    public required string Column { get; init; }

    public required WeldPhase Phase { get; init; }

    /// <summary>Whether this is the traverse without its ramps.</summary>
    public required bool IsSteady { get; init; }

    public required string SiUnit { get; init; }

    public required long Count { get; init; }

    public required double MeanSi { get; init; }

    public required double StandardDeviationSi { get; init; }

    public required double MinimumSi { get; init; }

    public required double MaximumSi { get; init; }

    public double? P1Si { get; init; }

    public double? MedianSi { get; init; }

    public double? P99Si { get; init; }

    /// <summary>Change over the steady traverse, from its start to its end, by the straight line of least squares.</summary>
    public double? DriftSi { get; init; }

    /// <summary>Mean of the last samples less that of the first: 256 of each, of a short phase a tenth of it.</summary>
    public double? ChangeSi { get; init; }
}

/// <summary>How long the tool stood at depth before it travelled, in one stay in the work; times as logged.</summary>
public sealed record DwellBeforeTravel(double StartSeconds, double EndSeconds)
{
    public TimeSpan Duration =>
        TimeSpan.FromMicroseconds(Math.Round((EndSeconds - StartSeconds) * 1e6));
}

/// <summary>What a log says about its run.</summary>
public sealed record LogEvaluation
{
    public required IReadOnlyList<PhaseSpan> Phases { get; init; }

    /// <summary>
    /// The dwell of each stay with travel; none where it can't be told, since the log holds depth and travel speed not both and nobody
    /// stated the bounds.
    /// </summary>
    public required IReadOnlyList<DwellBeforeTravel> Dwells { get; init; }

    /// <summary>The judged stretch or stretches of time: the traverse without its ramps.</summary>
    public required IReadOnlyList<SteadyStretch> Steady { get; init; }

    /// <summary>Path travelled in contact with the work, also of an interrupted run.</summary>
    public required Length Travelled { get; init; }

    public required SeamPositionSource? PositionSource { get; init; }

    public required RunCompletion Completion { get; init; }

    /// <summary>Whether the overlap past the start was completed; none when it is not planned.</summary>
    public required bool? OverlapCompleted { get; init; }

    public required IReadOnlyList<PhaseStatistics> Statistics { get; init; }

    /// <summary>Figures of each phase as the trade names them, in the order of a run.</summary>
    public required IReadOnlyList<PhaseFigures> PhaseFigures { get; init; }

    public required IReadOnlyList<ChannelExcursion> Excursions { get; init; }

    /// <summary>Windows whose channel the log does not hold: not judged, which is not a pass.</summary>
    public required IReadOnlyList<LogChannel> NotLogged { get; init; }

    /// <summary>Mechanical energy of the spindle over the steady traverse; none without torque and spindle speed.</summary>
    public required Energy? SpindleEnergy { get; init; }

    /// <summary>That energy per length of the steady traverse.</summary>
    public required LineEnergy? SpindleLineEnergy { get; init; }

    /// <summary>How the path by travel speed and an independent one close; none without an independent one.</summary>
    public required PathClosure? Closure { get; init; }

    /// <summary>When the seam was welded once round; none on a straight seam or when it was not.</summary>
    public required double? OverlapSeconds { get; init; }

    /// <summary>Low-frequency content of forces and torque over a part of the steady traverse: a hint, never a verdict.</summary>
    public required IReadOnlyList<ChannelSignature> Signatures { get; init; }

    /// <summary>Filters after which channels with a window were judged.</summary>
    public required IReadOnlyDictionary<LogChannel, SampleFilter> Filters { get; init; }

    public required IReadOnlyList<LogProblem> Problems { get; init; }

    /// <summary>What the samples themselves show; the engineer decides what it means.</summary>
    public required IReadOnlyList<LogObservation> Observations { get; init; }

    /// <summary>Places of the run in order of time, to interpolate between; all at zero when the position is not known.</summary>
    public required IReadOnlyList<SeamPoint> SeamPoints { get; init; }

    /// <summary>Judges a log by a plan, in two passes over its chunks.</summary>
    /// <exception cref="ArgumentException">A window is not in the SI unit of its channel.</exception>
    /// <exception cref="InvalidDataException">The chunks are damaged.</exception>
    public static LogEvaluation Evaluate(ProcessLog log, EvaluationPlan plan)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(plan);
        return RunJudgement.Of(log, plan);
    }

    /// <summary>Judges a log whose samples are unpacked already, on one thread.</summary>
    /// <exception cref="ArgumentException">A window is not in the SI unit of its channel.</exception>
    public static LogEvaluation Evaluate(
        ProcessLog log,
        EvaluationPlan plan,
        ISampleSource unpacked
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(unpacked);
        return RunJudgement.Of(log, plan, unpacked, unpacked);
    }
}

/// <summary>A stretch of the traverse without its ramps; time stamps as logged, both ends included.</summary>
public sealed record SteadyStretch(double FromSeconds, double ToSeconds, Length From, Length To);

/// <summary>Where the tool was at a moment of the log; the position counts from first contact.</summary>
public readonly record struct SeamPoint(double Seconds, Length Position);

/// <summary>The path integrated from the travel speed beside one that another channel shows over the same phases.</summary>
/// <param name="Source">Where the other one is taken from.</param>
/// <param name="BySpeed">Path by the travel speed.</param>
/// <param name="ByOther">Path by the other channel.</param>
public sealed record PathClosure(SeamPositionSource Source, Length BySpeed, Length ByOther)
{
    /// <summary>By how much the path by speed is longer.</summary>
    public Length Difference => BySpeed - ByOther;
}

/// <summary>The line of the spindle in a channel and what lies below it.</summary>
/// <param name="Channel">Force or torque.</param>
/// <param name="Line">The line, in the SI unit of the channel; null when it can't be seen.</param>
/// <param name="Sentence">Why it can't be seen; empty when it can.</param>
/// <param name="Samples">Samples looked at, from the middle of the steady traverse.</param>
public sealed record ChannelSignature(
    LogChannel Channel,
    SpindleLine? Line,
    string Sentence,
    int Samples
);
