namespace WeldTrace.Engineering.Statistics;

/// <summary>
/// Exponentially weighted moving average: <c>z_t = λ·x_t + (1 − λ)·z_(t−1)</c> from the target, limits
/// <c>target ± L·s·√(λ/(2 − λ)·(1 − (1 − λ)^(2t)))</c> (NIST/SEMATECH e-Handbook 6.3.2.4).
/// </summary>
/// <param name="Target">Target, in the unit of the values.</param>
/// <param name="StandardDeviation">Standard deviation of the process, above zero.</param>
/// <param name="Weight">λ, above 0, at most 1; usually 0.2 to 0.3.</param>
/// <param name="Width">L, above zero; usually 3.</param>
public sealed record WeightedAverageChart(
    double Target,
    double StandardDeviation,
    double Weight = 0.3,
    double Width = 3
)
{
    /// <summary>Limits after long time.</summary>
    public ControlLimits FinalLimits => Limits(1);

    /// <summary>The averages in order.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The weight is outside 0 to 1.</exception>
    public IReadOnlyList<double> Averages(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var (averages, last) = (new List<double>(values.Count), Target);
        foreach (var value in values)
        {
            last = (RequireWeight() * value) + ((1 - Weight) * last);
            averages.Add(last);
        }

        return averages;
    }

    /// <summary>Limits at a place in the order, from 1.</summary>
    public ControlLimits LimitsAt(int place)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(place, 1);
        return Limits(1 - Math.Pow(1 - Weight, 2 * place));
    }

    /// <summary>How the last average and its limits were worked out.</summary>
    /// <param name="values">Values in order of time, one or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no value, or the weight is outside 0 to 1.</exception>
    public Working WorkingOf(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var limits = LimitsAt(values.Count);
        return Working
            .Of(
                "Exponentially weighted moving average",
                "z_t = λ·x_t + (1 − λ)·z_before; limits T ± L·s·√(λ/(2 − λ)·(1 − (1 − λ)^(2t)))"
            )
            .Input("t", "values", values.Count)
            .Input("T", "target", Target)
            .Input("s", "standard deviation of the process", StandardDeviation)
            .Input("λ", "weight", Weight)
            .Input("L", "width", Width)
            .Result("z_t", "last average", Averages(values)[^1])
            .Result("", "lower limit there", limits.Lower)
            .Result("", "upper limit there", limits.Upper)
            .From("NIST/SEMATECH e-Handbook 6.3.2.4.")
            .Build();
    }

    private double RequireWeight() =>
        Weight is > 0 and <= 1
            ? Weight
            : throw new ArgumentOutOfRangeException(
                nameof(Weight),
                Weight,
                "Must lie above 0, at most 1."
            );

    private ControlLimits Limits(double part)
    {
        var width = Width * StandardDeviation * Math.Sqrt(RequireWeight() / (2 - Weight) * part);
        return new(Target - width, Target, Target + width);
    }
}
