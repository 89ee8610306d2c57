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
public sealed record LoggedParameter(
    WeldParameter Parameter,
    int Samples,
    double MinimumSi,
    double MeanSi,
    double MaximumSi,
    double StandardDeviationSi
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
    IReadOnlyList<WeldParameter> NotJudged
);
