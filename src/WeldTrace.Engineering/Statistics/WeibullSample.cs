namespace WeldTrace.Engineering.Statistics;

/// <summary>Two-parameter Weibull fit of a complete sample by maximum likelihood.</summary>
/// <param name="Shape">Shape β.</param>
/// <param name="Scale">Scale, in the unit of the values.</param>
/// <param name="ShapeSolution">How the shape equation was solved.</param>
/// <param name="Working">How it was worked out.</param>
public sealed record WeibullSample(
    double Shape,
    double Scale,
    Solution ShapeSolution,
    Working Working
) : IWorked
{
    /// <summary>Fits a sample; refused when a value is not above zero or all are equal.</summary>
    public static Computed<WeibullSample> Fit(Sample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var check = new InputCheck()
            .Positive("smallest value", sample.Values.Min())
            .Positive("largest value", sample.Values.Max())
            .Require(
                sample.Values.Distinct().Count() > 1,
                RefusalReason.TooFewData,
                "values",
                "They are all equal.",
                "Enter values with more digits."
            );
        if (!check.IsClean)
        {
            return check.Refused<WeibullSample>();
        }

        var data = sample.Values.Select(value => new CensoredTime(value, true)).ToList();
        return CensoredWeibull.TryFit(data, out var fit)
            ? Computed.Of(
                new WeibullSample(fit.Shape, fit.Scale, fit.ShapeSolution, Show(sample, fit))
            )
            : check
                .Require(
                    false,
                    RefusalReason.NoConvergence,
                    "values",
                    "No shape was found.",
                    "Check the values."
                )
                .Refused<WeibullSample>();
    }

    private static Working Show(Sample sample, CensoredWeibull fit) =>
        Working
            .Of(
                "Weibull fit of a sample",
                "Σ x^β·ln x/Σ x^β − 1/β − Σ ln x/n = 0; scale = (Σ x^β/n)^(1/β)"
            )
            .Input("n", "sample size", sample.Count)
            .Step("", "steps of the solution", fit.ShapeSolution.Iterations)
            .Step("", "residual", fit.ShapeSolution.Residual)
            .Result("β", "shape", fit.Shape)
            .Result("", "scale", fit.Scale)
            .From("Maximum likelihood.")
            .Build();
}
