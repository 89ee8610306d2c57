namespace WeldTrace.Engineering.Statistics;

/// <summary>A two-sided confidence interval.</summary>
/// <param name="Lower">Lower end.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="Confidence">Confidence, between 0 and 1.</param>
public readonly record struct Interval(double Lower, double Upper, double Confidence);
