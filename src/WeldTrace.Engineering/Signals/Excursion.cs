namespace WeldTrace.Engineering.Signals;

/// <summary>On which side of its window a signal was.</summary>
public enum ExcursionSide
{
    /// <summary>Below the lower limit.</summary>
    Low,

    /// <summary>Above the upper limit.</summary>
    High,
}

/// <summary>A stretch in which a signal was outside its window.</summary>
/// <param name="Side">On which side.</param>
/// <param name="StartSeconds">Time stamp of the first sample outside, in s.</param>
/// <param name="EndSeconds">Time stamp of the last sample outside plus one sample period, in s.</param>
/// <param name="StartMetres">Position along the seam at the first sample outside, in m.</param>
/// <param name="EndMetres">Position along the seam at the end, in m.</param>
/// <param name="ExtremeInSampleUnit">Lowest value (low side) or highest value (high side), in the unit of the samples.</param>
/// <param name="ExtremeSeconds">Time stamp of the extreme, in s; the first one of equals.</param>
public readonly record struct Excursion(
    ExcursionSide Side,
    double StartSeconds,
    double EndSeconds,
    double StartMetres,
    double EndMetres,
    double ExtremeInSampleUnit,
    double ExtremeSeconds
);
