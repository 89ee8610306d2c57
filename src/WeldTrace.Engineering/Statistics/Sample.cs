namespace WeldTrace.Engineering.Statistics;

/// <summary>Mean and standard deviation of a sample, by two passes with correction (holds NIST StRD to 11 digits and more).</summary>
public sealed record Sample
{
    private const double Largest = 1e100;

    private Sample(IReadOnlyList<double> values)
    {
        Values = values;
        var rough = values.Sum() / values.Count;
        Mean = rough + (values.Sum(x => x - rough) / values.Count);
        var squares = values.Sum(x => (x - Mean) * (x - Mean));
        var rest = values.Sum(x => x - Mean);
        StandardDeviation = Math.Sqrt(
            (squares - (rest * rest / values.Count)) / (values.Count - 1)
        );
    }

    /// <summary>The values in their order, in one unit.</summary>
    public IReadOnlyList<double> Values { get; }

    /// <summary>Number of values.</summary>
    public int Count => Values.Count;

    /// <summary>Mean, in the unit of the values.</summary>
    public double Mean { get; }

    /// <summary>Standard deviation with n − 1, in the unit of the values.</summary>
    public double StandardDeviation { get; }

    /// <summary>Takes a sample of at least two values.</summary>
    /// <exception cref="ArgumentException">There are fewer than two values, or one is not of a sensible size.</exception>
    public static Sample Of(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        return values.Count >= 2 && values.All(value => Math.Abs(value) < Largest)
            ? new(values)
            : throw new ArgumentException(
                "A sample needs two values or more, each of a sensible size.",
                nameof(values)
            );
    }
}
