namespace WeldTrace.Engineering.Statistics;

/// <summary>
/// Chart of individual values and moving ranges: <c>mean ± 3·MR/d2</c>, moving range up to <c>D4·MR</c>. d2 is 2/√π; the NIST/SEMATECH
/// e-Handbook (6.3.2.2) rounds it to 1.128. Fewer than 20 values give trial limits only.
/// </summary>
public sealed record IndividualsChart : IWorked
{
    /// <summary>d2 for two values as rounded in handbooks.</summary>
    public const double RoundedD2 = 1.128;

    private const int Enough = 20;

    private IndividualsChart(IReadOnlyList<double> values, double d2)
    {
        MovingRanges = [.. values.Zip(values.Skip(1), (one, next) => Math.Abs(next - one))];
        MeanRange = MovingRanges.Average();
        var mean = Sample.Of(values).Mean;
        var width = 3 * MeanRange / d2;
        Values = new(mean - width, mean, mean + width);
        Ranges = new(0, MeanRange, ControlConstants.For(2).UpperRangeFactor * MeanRange);
        Working = Working
            .Of("Chart of individual values", "mean ± 3·MR/d2; moving range up to D4·MR")
            .Input("n", "values", values.Count)
            .Input("d2", "constant for two values", d2)
            .Step("MR", "mean moving range", MeanRange)
            .Result("", "lower limit", Values.Lower)
            .Result("", "centre line", Values.Centre)
            .Result("", "upper limit", Values.Upper)
            .Result("", "upper limit of the moving range", Ranges.Upper)
            .From("NIST/SEMATECH e-Handbook 6.3.2.2.")
            .Validity(
                Validity.When(
                    values.Count >= Enough,
                    $"There are at least {Enough} values.",
                    "these are trial limits only."
                )
            )
            .Build();
    }

    /// <summary>Ranges of neighbouring values.</summary>
    public IReadOnlyList<double> MovingRanges { get; }

    /// <summary>Mean moving range.</summary>
    public double MeanRange { get; }

    /// <summary>Limits of the values.</summary>
    public ControlLimits Values { get; }

    /// <summary>Limits of the moving ranges.</summary>
    public ControlLimits Ranges { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the limits.</summary>
    /// <param name="values">Values in order of time, three or more.</param>
    /// <param name="d2">Constant for two values; exact when null.</param>
    public static Computed<IndividualsChart> Compute(
        IReadOnlyList<double> values,
        double? d2 = null
    )
    {
        ArgumentNullException.ThrowIfNull(values);
        var check = new InputCheck()
            .Positive("d2", d2 ?? 1)
            .Require(
                values.Count >= 3,
                RefusalReason.TooFewData,
                "values",
                "There are fewer than three.",
                "Add values."
            )
            .Sensible("values", values);
        return check.Compute(() => new IndividualsChart(values, d2 ?? ControlConstants.For(2).D2));
    }
}
