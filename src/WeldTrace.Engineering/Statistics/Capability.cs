namespace WeldTrace.Engineering.Statistics;

/// <summary>Tolerance of a process figure, in its unit.</summary>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit, above the lower one.</param>
/// <param name="Target">Target, or null.</param>
public sealed record ToleranceRange(double Lower, double Upper, double? Target = null);

/// <summary>
/// Capability: <c>Cp = (USL − LSL)/(6s)</c>, <c>Cpk = min(USL − mean, mean − LSL)/(3s)</c>, <c>Cpm</c> about a target, <c>k = |m − mean|/((USL − LSL)/2)</c>. Cp interval by
/// χ², Cpk interval <c>Cpk·(1 ± z·√(1/(9n·Cpk²) + 1/(2(n − 1))))</c> (Bissell). NIST/SEMATECH e-Handbook 6.1.6.
/// </summary>
public sealed record Capability : IWorked
{
    private const int Enough = 20;

    private Capability(ToleranceRange range, double mean, double deviation, int count)
    {
        var width = range.Upper - range.Lower;
        Count = count;
        Cp = width / (6 * deviation);
        CpUpper = (range.Upper - mean) / (3 * deviation);
        CpLower = (mean - range.Lower) / (3 * deviation);
        OffCentre = Math.Abs(((range.Upper + range.Lower) / 2) - mean) / (width / 2);
        Cpm = range.Target is { } target
            ? width / (6 * Math.Sqrt((deviation * deviation) + ((mean - target) * (mean - target))))
            : null;
        Working = Show(range, mean, deviation);
    }

    /// <summary>Number of values behind the standard deviation.</summary>
    public int Count { get; }

    /// <summary>Potential capability.</summary>
    public double Cp { get; }

    /// <summary>Capability towards the upper limit.</summary>
    public double CpUpper { get; }

    /// <summary>Capability towards the lower limit.</summary>
    public double CpLower { get; }

    /// <summary>The smaller of both.</summary>
    public double Cpk => Math.Min(CpUpper, CpLower);

    /// <summary>Capability about the target; null without one.</summary>
    public double? Cpm { get; }

    /// <summary>Distance from the middle over half the tolerance, k.</summary>
    public double OffCentre { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the capability.</summary>
    /// <param name="range">Tolerance.</param>
    /// <param name="mean">Mean of the process.</param>
    /// <param name="standardDeviation">Its standard deviation, above zero.</param>
    /// <param name="count">Number of values behind it, 2 or more.</param>
    public static Computed<Capability> Compute(
        ToleranceRange range,
        double mean,
        double standardDeviation,
        int count
    )
    {
        ArgumentNullException.ThrowIfNull(range);
        var check = new InputCheck()
            .Positive("standard deviation", standardDeviation)
            .Sensible("mean and limits", [mean, range.Lower, range.Upper, range.Target ?? 0])
            .Require(
                range.Upper > range.Lower,
                RefusalReason.OutOfRange,
                "upper limit",
                "It is not above the lower one.",
                "Swap them."
            )
            .Require(
                count >= 2,
                RefusalReason.TooFewData,
                "values",
                "There are fewer than two.",
                "Add values."
            );
        return check.Compute(() => new Capability(range, mean, standardDeviation, count));
    }

    /// <summary>Two-sided interval of Cp by χ².</summary>
    /// <param name="confidence">Between 0 and 1.</param>
    public Interval CpInterval(double confidence)
    {
        var tail = (1 - NormalQuantile.RequireProbability(confidence, nameof(confidence))) / 2;
        double Bound(double probability) =>
            Cp * Math.Sqrt(ChiSquare.Quantile(Count - 1, probability) / (Count - 1));
        return new(Bound(tail), Bound(1 - tail), confidence);
    }

    /// <summary>Two-sided interval of Cpk (Bissell's approximation).</summary>
    /// <param name="confidence">Between 0 and 1.</param>
    public Interval CpkInterval(double confidence)
    {
        var z = NormalQuantile.TwoSided(
            NormalQuantile.RequireProbability(confidence, nameof(confidence))
        );
        var width = z * Math.Sqrt((1 / (9.0 * Count)) + (Cpk * Cpk / (2.0 * (Count - 1))));
        return new(Cpk - width, Cpk + width, confidence);
    }

    private Working Show(ToleranceRange range, double mean, double deviation) =>
        Working
            .Of(
                "Process capability",
                "Cp = (USL − LSL)/(6s); Cpk = min(USL − mean, mean − LSL)/(3s)"
            )
            .Input("LSL", "lower limit", range.Lower)
            .Input("USL", "upper limit", range.Upper)
            .OptionalInput("T", "target", range.Target)
            .Input("", "mean", mean)
            .Input("s", "standard deviation", deviation)
            .Input("n", "values", Count)
            .Result("Cp", "potential capability", Cp)
            .Result("Cpk", "capability", Cpk)
            .From("NIST/SEMATECH e-Handbook 6.1.6.")
            .Validity(
                Validity.When(
                    Count >= Enough,
                    $"There are at least {Enough} values.",
                    "the figure is rough; show its interval."
                )
            )
            .Build();
}
