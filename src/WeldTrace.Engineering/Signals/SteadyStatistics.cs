namespace WeldTrace.Engineering.Signals;

/// <summary>
/// Statistics of a signal over the steady traverse, all in the unit of the samples. Percentiles are quantiles
/// of type 7, within half a class of the histogram that counted them.
/// </summary>
/// <param name="Count">Samples.</param>
/// <param name="MeanInSampleUnit">Arithmetic mean.</param>
/// <param name="StandardDeviationInSampleUnit">Sample standard deviation (divisor n - 1).</param>
/// <param name="MinimumInSampleUnit">Smallest sample.</param>
/// <param name="MaximumInSampleUnit">Largest sample.</param>
/// <param name="P1InSampleUnit">1st percentile.</param>
/// <param name="MedianInSampleUnit">50th percentile.</param>
/// <param name="P99InSampleUnit">99th percentile.</param>
public sealed record SteadyStatistics(
    long Count,
    double MeanInSampleUnit,
    double StandardDeviationInSampleUnit,
    double MinimumInSampleUnit,
    double MaximumInSampleUnit,
    double P1InSampleUnit,
    double MedianInSampleUnit,
    double P99InSampleUnit
)
{
    /// <summary>Joins running statistics with the histogram of the same samples.</summary>
    /// <param name="running">Statistics of one or more samples.</param>
    /// <param name="histogram">Histogram of the same samples.</param>
    /// <exception cref="ArgumentException">The two did not see equally many samples, or none.</exception>
    public static SteadyStatistics From(
        in RunningStatistics running,
        CountingHistogram histogram
    ) =>
        running.Count == histogram.Count && running.Count > 0
            ? new(
                running.Count,
                running.MeanInSampleUnit,
                running.StandardDeviationInSampleUnit,
                running.MinimumInSampleUnit,
                running.MaximumInSampleUnit,
                histogram.QuantileInSampleUnit(0.01),
                histogram.QuantileInSampleUnit(0.5),
                histogram.QuantileInSampleUnit(0.99)
            )
            : throw new ArgumentException("Statistics and histogram are not of the same samples.");
}
