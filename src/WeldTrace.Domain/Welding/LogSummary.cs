using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Signals;

namespace WeldTrace.Domain.Welding;

/// <summary>A phase of the run as found in the process log.</summary>
/// <param name="Phase">Trade word: plunge, dwell, ramp, traverse, overlap or exit.</param>
/// <param name="StartSeconds">Start, in seconds of the log's own time.</param>
/// <param name="EndSeconds">End, in seconds of the log's own time.</param>
public sealed record LoggedPhase(string Phase, double StartSeconds, double EndSeconds)
{
    /// <summary>From contact until the tool is at depth.</summary>
    public const string Plunge = "plunge";

    /// <summary>At depth, not travelling.</summary>
    public const string Dwell = "dwell";

    /// <summary>Getting up to speed, or slowing down.</summary>
    public const string Ramp = "ramp";

    /// <summary>Travelling at speed.</summary>
    public const string Traverse = "traverse";

    /// <summary>Travelling over what is welded already.</summary>
    public const string Overlap = "overlap";

    /// <summary>From the end of travel until the tool is free.</summary>
    public const string Exit = "exit";

    /// <summary>Whether the tool travels.</summary>
    public bool IsTravel => Phase is Ramp or Traverse or Overlap;
}

/// <summary>What one parameter did over the judged traverse, in its coherent SI unit.</summary>
/// <param name="Parameter">Parameter.</param>
/// <param name="Samples">Number of samples.</param>
/// <param name="MinimumSi">Least value, SI.</param>
/// <param name="MeanSi">Mean, SI.</param>
/// <param name="MaximumSi">Greatest value, SI.</param>
/// <param name="StandardDeviationSi">Standard deviation, SI (a difference: no offset for temperatures).</param>
/// <param name="P1Si">Value below which a hundredth of the samples lie, SI; null when that was not kept.</param>
/// <param name="MedianSi">Median, SI; null when that was not kept.</param>
/// <param name="P99Si">Value below which 99 hundredths of the samples lie, SI; null when that was not kept.</param>
/// <param name="DriftSi">Change from start to end by the straight line of least squares, SI difference; null when that was not kept.</param>
/// <param name="ChangeSi">Mean of the last samples less that of the first, SI difference; null when that was not kept.</param>
public sealed record LoggedParameter(
    WeldParameter Parameter,
    int Samples,
    double MinimumSi,
    double MeanSi,
    double MaximumSi,
    double StandardDeviationSi,
    double? P1Si = null,
    double? MedianSi = null,
    double? P99Si = null,
    double? DriftSi = null,
    double? ChangeSi = null
);

/// <summary>What a run did in one phase; stretches of the same phase are taken together.</summary>
/// <param name="Phase">Trade word, as of <see cref="LoggedPhase"/>.</param>
/// <param name="Seconds">How long it lasted.</param>
/// <param name="Metres">Path along the seam, in m.</param>
/// <param name="SpindleJoules">Mechanical energy of the spindle, in J; null without torque and spindle speed.</param>
/// <param name="PitchMetres">Travel per turn by the mean speeds, in m; null where the tool doesn't travel, or without both speeds.</param>
/// <param name="Parameters">Behaviour of each watched parameter in the phase.</param>
/// <param name="DeepestMetres">Greatest plunge depth, in m, also without a window for it; null when it was not logged.</param>
public sealed record LoggedPhaseFigures(
    string Phase,
    double Seconds,
    double Metres,
    double? SpindleJoules,
    double? PitchMetres,
    IReadOnlyList<LoggedParameter> Parameters,
    double? DeepestMetres = null
)
{
    /// <summary>Energy per length, in J/m; null without energy, or where the tool doesn't travel.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double? LineEnergyJoulesPerMetre =>
        SpindleJoules is { } joules && PitchMetres is not null && Metres > 0
            ? joules / Metres
            : null;
}

/// <summary>A stretch of the traverse outside a window for longer than the debounce.</summary>
/// <param name="Parameter">Parameter.</param>
/// <param name="IsAbove">Whether it lay above the upper limit; otherwise below the lower.</param>
/// <param name="StartSeconds">Start, in seconds of the log's own time.</param>
/// <param name="EndSeconds">End, in seconds of the log's own time.</param>
/// <param name="StartAngle">Angle from the start of the pass.</param>
/// <param name="EndAngle">Angle from the start of the pass.</param>
/// <param name="Length">Length along the seam.</param>
/// <param name="ExtremeSi">Value farthest outside, SI.</param>
/// <param name="Phase">Phase of the window; null means the traverse.</param>
/// <param name="IsWarning">Whether only a warning was passed; null in logs that were judged before there were warnings, which passed a limit.</param>
public sealed record LoggedExcursion(
    WeldParameter Parameter,
    bool IsAbove,
    double StartSeconds,
    double EndSeconds,
    Angle StartAngle,
    Angle EndAngle,
    Length Length,
    double ExtremeSi,
    string? Phase = null,
    bool? IsWarning = null
);

/// <summary>What the process log of a run showed, with the hashes that tie it to the stored samples.</summary>
/// <param name="FileName">Name of the file as it was brought.</param>
/// <param name="OriginalSha256">SHA-256 of the original bytes, hexadecimal.</param>
/// <param name="OriginalBytes">Length of the original.</param>
/// <param name="CsvSha256">SHA-256 of the log as the site writes it out again, hexadecimal.</param>
/// <param name="Rows">Number of samples.</param>
/// <param name="DurationSeconds">Time from first to last sample.</param>
/// <param name="Travelled">Length travelled in contact along the seam.</param>
/// <param name="ReachedEnd">Whether the planned path was travelled whole.</param>
/// <param name="Phases">Phases found.</param>
/// <param name="Parameters">Behaviour of each watched parameter over the judged traverse.</param>
/// <param name="Excursions">Excursions beyond the debounce.</param>
/// <param name="NotJudged">Windows that could not be judged, since the log has no such column.</param>
/// <param name="Notes">What the samples themselves show, such as gaps or a channel that stands still; null when that was not looked for.</param>
/// <param name="Places">Where the tool was at moments of the log, to interpolate between; null when that was not kept.</param>
/// <param name="LineEnergyJoulesPerMetre">Mechanical energy of the spindle per length of the judged traverse; null without torque and spindle speed.</param>
/// <param name="PitchMetres">Travel per turn over the judged traverse; null without both speeds.</param>
/// <param name="Closure">How the path by speed and another one close; null without another one.</param>
/// <param name="Signatures">Low-frequency content of forces and torque; null when it was not looked for.</param>
/// <param name="PhaseFigures">Figures of each phase; null when they were not kept.</param>
public sealed record LogSummary(
    string FileName,
    string OriginalSha256,
    long OriginalBytes,
    string CsvSha256,
    long Rows,
    double DurationSeconds,
    Length Travelled,
    bool ReachedEnd,
    IReadOnlyList<LoggedPhase> Phases,
    IReadOnlyList<LoggedParameter> Parameters,
    IReadOnlyList<LoggedExcursion> Excursions,
    IReadOnlyList<WeldParameter> NotJudged,
    IReadOnlyList<LoggedNote>? Notes = null,
    IReadOnlyList<LoggedPlace>? Places = null,
    double? LineEnergyJoulesPerMetre = null,
    double? PitchMetres = null,
    LoggedClosure? Closure = null,
    IReadOnlyList<LoggedSignature>? Signatures = null,
    IReadOnlyList<LoggedPhaseFigures>? PhaseFigures = null
)
{
    /// <summary>Channels that were judged after a filter; null when none was.</summary>
    public IReadOnlyList<JudgedAfter>? Filters { get; init; }

    /// <summary>Excursions beyond a limit; warnings are left out.</summary>
    public IReadOnlyList<LoggedExcursion> HardExcursions =>
        [.. Excursions.Where(e => e.IsWarning is not true)];
}

/// <summary>A channel that was judged after a filter.</summary>
/// <param name="Channel">Channel, as the log reader names it.</param>
/// <param name="Parameter">Channel in words.</param>
/// <param name="Filter">The filter.</param>
public sealed record JudgedAfter(string Channel, string Parameter, SampleFilter Filter);

/// <summary>How the path by the travel speed and one by another channel close.</summary>
/// <param name="Source">The other channel in words.</param>
/// <param name="BySpeed">Path by the travel speed.</param>
/// <param name="ByOther">Path by the other channel.</param>
public sealed record LoggedClosure(string Source, Length BySpeed, Length ByOther);

/// <summary>Low-frequency content of a force or torque: a hint at disturbed flow of the metal, never a verdict.</summary>
/// <param name="Channel">Force or torque in words.</param>
/// <param name="SpindleHertz">Frequency of the spindle; null when it can't be seen.</param>
/// <param name="AmplitudeSi">Amplitude of the line of the spindle, SI.</param>
/// <param name="LowBandSi">Root mean square below 0.9 of that frequency, SI.</param>
/// <param name="Ratio">Low band over the line; null without a line.</param>
/// <param name="Samples">Samples looked at.</param>
/// <param name="WhyNot">Why it can't be seen; empty when it can.</param>
public sealed record LoggedSignature(
    string Channel,
    double? SpindleHertz,
    double? AmplitudeSi,
    double? LowBandSi,
    double? Ratio,
    int Samples,
    string WhyNot
)
{
    /// <summary>Where it was published.</summary>
    public const string Source =
        "Arbegast 2005 (summary): forces oscillate with the flow of the metal, and their frequencies go with voids; Boldsaikhan et al. (abstract). The band is common practice.";
}

/// <summary>Something about the samples that a person should look at before trusting them; it judges nothing.</summary>
/// <param name="Sentence">What was seen and where.</param>
/// <param name="FirstRow">First data row, from 1.</param>
/// <param name="LastRow">Last data row.</param>
/// <param name="StartSeconds">Start, in seconds of the log's own time.</param>
/// <param name="EndSeconds">End, in seconds of the log's own time.</param>
public sealed record LoggedNote(
    string Sentence,
    long FirstRow,
    long LastRow,
    double StartSeconds,
    double EndSeconds
);

/// <summary>Where the tool was at a moment of the log.</summary>
/// <param name="Seconds">Seconds of the log's own time.</param>
/// <param name="Metres">Path along the seam from first contact, in m.</param>
public readonly record struct LoggedPlace(double Seconds, double Metres);
