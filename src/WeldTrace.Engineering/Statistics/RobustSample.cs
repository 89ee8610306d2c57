namespace WeldTrace.Engineering.Statistics;

/// <summary>Rule by which a quantile between two values is taken (Hyndman and Fan 1996).</summary>
public enum QuantileType
{
    /// <summary>Place p·(n + 1); the rule of several quality programs.</summary>
    Six,

    /// <summary>Place 1 + p·(n − 1); the default of R and numpy.</summary>
    Seven,
}

/// <summary>
/// Statistics that a few wild values do not move: median, median absolute deviation, quartiles, and the modified
/// <c>z = 0.6745·(x − median)/MAD</c>, which points at a value beyond 3.5 (Iglewicz and Hoaglin, as quoted). A pointed value is a reason to look,
/// never to delete. All results are in the unit of the values.
/// </summary>
public sealed record RobustSample : IWorked
{
    /// <summary>Factor that makes the median absolute deviation of normal values their standard deviation.</summary>
    public const double NormalFactor = 1.4826;

    /// <summary>Modified z beyond which a value is pointed at.</summary>
    public const double UsualLimit = 3.5;

    private const double NormalQuartile = 0.6745;
    private readonly double[] _sorted;

    private RobustSample(IReadOnlyList<double> values)
    {
        _sorted = [.. values.Order()];
        Values = values;
        Median = Quantile(0.5);
        MedianDeviation = MiddleOf([.. values.Select(x => Math.Abs(x - Median)).Order()]);
        FarthestModifiedZ =
            MedianDeviation > 0
                ? Quantities.Finite.Require(values.Max(x => Math.Abs(ModifiedZ(x))))
                : null;
        Working = Show();
    }

    /// <summary>The values in their order.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>Middle value.</summary>
    public double Median { get; }

    /// <summary>Median of the absolute distances from the median (MAD).</summary>
    public double MedianDeviation { get; }

    /// <summary>Standard deviation of a normal sample with this median deviation.</summary>
    public double RobustDeviation => NormalFactor * MedianDeviation;

    /// <summary>Largest modified z without its sign; null when more than half of the values are equal.</summary>
    public double? FarthestModifiedZ { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Takes values.</summary>
    /// <param name="values">Finite values of one unit, one or more.</param>
    public static Computed<RobustSample> Of(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return new InputCheck()
            .Require(
                values.Count > 0,
                RefusalReason.TooFewData,
                "values",
                "There is none.",
                "Add values."
            )
            .Sensible("values", values)
            .Compute(() => new RobustSample(values));
    }

    /// <summary>Quantile between the ordered values.</summary>
    /// <param name="probability">0 to 1.</param>
    /// <param name="type">Rule between two values.</param>
    public double Quantile(double probability, QuantileType type = QuantileType.Seven)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(probability);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(probability, 1);
        var place = type switch
        {
            QuantileType.Six => (probability * (_sorted.Length + 1)) - 1,
            QuantileType.Seven => probability * (_sorted.Length - 1),
            _ => throw new ArgumentOutOfRangeException(nameof(type), type, "Unknown rule."),
        };
        place = Math.Clamp(place, 0, _sorted.Length - 1);
        var below = (int)place;
        var above = Math.Min(below + 1, _sorted.Length - 1);
        return _sorted[below] + ((place - below) * (_sorted[above] - _sorted[below]));
    }

    /// <summary>Values whose modified z lies beyond the limit; none when more than half of the values are equal.</summary>
    /// <param name="limit">Limit of the modified z, above zero.</param>
    public int Pointed(double limit = UsualLimit)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(limit);
        return MedianDeviation > 0 ? Values.Count(x => Math.Abs(ModifiedZ(x)) > limit) : 0;
    }

    private double ModifiedZ(double value) => NormalQuartile * (value - Median) / MedianDeviation;

    private static double MiddleOf(double[] sorted) =>
        (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;

    private Working Show() =>
        Working
            .Of("Robust statistics of a sample", "z = 0.6745·(x − median)/MAD")
            .Input("n", "sample size", Values.Count)
            .Result("median", "median", Median)
            .Result("MAD", "median absolute deviation", MedianDeviation)
            .Result("", "first quartile, type 7", Quantile(0.25))
            .Result("", "third quartile, type 7", Quantile(0.75))
            .OptionalResult("z", "largest modified z", FarthestModifiedZ)
            .From("Iglewicz and Hoaglin, as quoted; quantiles of Hyndman and Fan 1996.")
            .Build();
}
