namespace WeldTrace.ProcessLogs;

/// <summary>Something about the samples that a person should look at before trusting them.</summary>
public enum LogObservationKind
{
    /// <summary>No samples for longer than five sample periods.</summary>
    Gap,

    /// <summary>The sample period changes by more than a fifth and stays so.</summary>
    RateChange,

    /// <summary>A channel that is never still stands still for a second or more, with the tool in the work.</summary>
    Stuck,

    /// <summary>A channel stays at its own greatest or least value, as a converter at the end of its range does.</summary>
    Saturated,

    /// <summary>Rows come again with other time stamps.</summary>
    Repeated,
}

/// <summary>
/// What the samples themselves show: it refuses nothing and judges nothing, the engineer decides. The thresholds are common
/// practice, no published source.
/// </summary>
/// <param name="Kind">What was seen.</param>
/// <param name="Column">Column; none when it concerns the rows as a whole.</param>
/// <param name="FirstRow">First data row, from 1.</param>
/// <param name="LastRow">Last data row.</param>
/// <param name="StartSeconds">Time stamp of the first row, as logged.</param>
/// <param name="EndSeconds">Time stamp of the last row, as logged.</param>
/// <param name="Sentence">What was seen and where, one plain sentence.</param>
public sealed record LogObservation(
    LogObservationKind Kind,
    string? Column,
    long FirstRow,
    long LastRow,
    double StartSeconds,
    double EndSeconds,
    string Sentence
);
