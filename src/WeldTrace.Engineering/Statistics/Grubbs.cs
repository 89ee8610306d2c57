namespace WeldTrace.Engineering.Statistics;

/// <summary>
/// Grubbs' test for one outlier: <c>G = max|x − mean|/s</c>, critical <c>(n − 1)/√n·√(t²/(n − 2 + t²))</c> with t at 1 − α/(2n) two-sided or
/// 1 − α/n one-sided (NIST/SEMATECH e-Handbook 1.3.5.17.1). One outlier at a time; an outlier is a reason to look, never to delete.
/// </summary>
public sealed record Grubbs : IWorked
{
    private const double SmallestLevel = 1e-9;
    private const double LargestLevel = 0.5;

    private Grubbs(Sample sample, double alpha)
    {
        var index = Enumerable
            .Range(0, sample.Count)
            .MaxBy(i => Math.Abs(sample.Values[i] - sample.Mean));
        Index = index;
        Statistic = Math.Abs(sample.Values[index] - sample.Mean) / sample.StandardDeviation;
        Critical = CriticalValue(sample.Count, alpha, isTwoSided: true);
        Working = Working
            .Of(
                "Grubbs' test for one outlier",
                "G = max|x − mean|/s; critical (n − 1)/√n·√(t²/(n − 2 + t²))"
            )
            .Input("n", "sample size", sample.Count)
            .Input("α", "level", alpha)
            .Input("x", "farthest value", sample.Values[index])
            .Step("", "mean", sample.Mean)
            .Step("s", "standard deviation", sample.StandardDeviation)
            .Result("G", "statistic", Statistic)
            .Result("", "critical value, two-sided", Critical)
            .From("NIST/SEMATECH e-Handbook 1.3.5.17.1.")
            .Validity(
                Validity.When(
                    sample.Count >= 7,
                    "There are at least 7 values.",
                    "the test is weak."
                )
            )
            .Build();
    }

    /// <summary>Index of the value farthest from the mean.</summary>
    public int Index { get; }

    /// <summary>The statistic G.</summary>
    public double Statistic { get; }

    /// <summary>Two-sided critical value.</summary>
    public double Critical { get; }

    /// <summary>Whether the farthest value is an outlier at that level.</summary>
    public bool IsOutlier => Statistic > Critical;

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Tests a sample of three values or more that are not all equal.</summary>
    /// <param name="sample">The sample; normal apart from the outlier.</param>
    /// <param name="alpha">Level, between 0 and 1.</param>
    public static Computed<Grubbs> Test(Sample sample, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var check = new InputCheck()
            .Between("level", alpha, SmallestLevel, LargestLevel)
            .Positive("standard deviation", sample.StandardDeviation)
            .Require(
                sample.Count >= 3,
                RefusalReason.TooFewData,
                "values",
                "There are fewer than three.",
                "Add values."
            );
        return check.Compute(() => new Grubbs(sample, alpha));
    }

    /// <summary>Critical value.</summary>
    /// <param name="count">Sample size, 3 or more.</param>
    /// <param name="alpha">Level, 1e-9 to 0.5.</param>
    /// <param name="isTwoSided">Whether both tails are looked at.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than 3 values, or the level is outside 1e-9 to 0.5.</exception>
    public static double CriticalValue(int count, double alpha, bool isTwoSided)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        ArgumentOutOfRangeException.ThrowIfLessThan(alpha, SmallestLevel);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(alpha, LargestLevel);
        var tail = alpha / (isTwoSided ? 2 * count : count);
        var t = StudentQuantile.Above(Math.Min(tail, 0.499999), count - 2);
        return (count - 1) / Math.Sqrt(count) * Math.Sqrt(t * t / (count - 2 + (t * t)));
    }
}
