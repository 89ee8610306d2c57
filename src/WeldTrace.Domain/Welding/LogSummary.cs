using WeldTrace.Domain.Procedures;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Welding;

/// <summary>A phase of the run as found in the process log.</summary>
/// <param name="Phase">Trade word: plunge, dwell, traverse or exit.</param>
/// <param name="StartSeconds">Start, in seconds of the log's own time.</param>
/// <param name="EndSeconds">End, in seconds of the log's own time.</param>
public sealed record LoggedPhase(string Phase, double StartSeconds, double EndSeconds);

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
    double? DriftSi = null
);

/// <summary>A stretch of the traverse outside a window for longer than the debounce.</summary>
/// <param name="Parameter">Parameter.</param>
/// <param name="IsAbove">Whether it lay above the upper limit; otherwise below the lower.</param>
/// <param name="StartSeconds">Start, in seconds of the log's own time.</param>
/// <param name="EndSeconds">End, in seconds of the log's own time.</param>
/// <param name="StartAngle">Angle from the start of the pass.</param>
/// <param name="EndAngle">Angle from the start of the pass.</param>
/// <param name="Length">Length along the seam.</param>
/// <param name="ExtremeSi">Value farthest outside, SI.</param>
public sealed record LoggedExcursion(
    WeldParameter Parameter,
    bool IsAbove,
    double StartSeconds,
    double EndSeconds,
    Angle StartAngle,
    Angle EndAngle,
    Length Length,
    double ExtremeSi
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
    double? PitchMetres = null
);

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
