using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Statistics;

/// <summary>
/// Factors k of normal tolerance limits mean ± k·s. The exact one-sided factor is the root of
/// <c>∫ Φ(k·√n·w − z_p·√n)·f(w) dw = C</c>, w² = χ²(n − 1)/(n − 1) (noncentral t); Natrella's approximation and Howe's two-sided factor as in
/// NIST/SEMATECH e-Handbook 7.2.6.3. Printed tables differ in the fourth digit: name the method with the result.
/// </summary>
public static class ToleranceFactor
{
    /// <summary>Exact one-sided factor, with steps and residual; normal data only.</summary>
    /// <param name="count">Sample size, 2 or more.</param>
    /// <param name="content">Part of the population p, above 0.5, below 1.</param>
    /// <param name="confidence">Confidence C, between 0 and 1.</param>
    public static Computed<Solution> TryOneSided(int count, double content, double confidence)
    {
        var check = new InputCheck()
            .Between("sample size", count, 2, 10_000)
            .Between("content", content, 0.5, 0.9999)
            .Between("confidence", confidence, 0.01, 0.9999);
        if (!check.IsClean)
        {
            return check.Refused<Solution>();
        }

        NoncentralCoverage coverage = new(count, content);
        if (!coverage.TrySolve(confidence, out var found))
        {
            return check
                .Require(
                    false,
                    RefusalReason.NoConvergence,
                    "tolerance factor",
                    "It was not found.",
                    "Check the inputs."
                )
                .Refused<Solution>();
        }

        var working = Working
            .Of("One-sided tolerance factor, exact", "k = t'(n − 1; C; z_p·√n)/√n")
            .Input("n", "sample size", count)
            .Input("p", "content", content)
            .Input("C", "confidence", confidence)
            .Step("", "steps of the solution", found.Iterations)
            .Step("", "residual", found.Residual)
            .Result("k", "factor", found.Value)
            .From(
                "Noncentral t; checked on the tables of CMH-17-1G (as quoted, up to 0.002 different)."
            )
            .Build();
        return Computed.Of(found, working);
    }

    /// <summary>Exact one-sided factor; see <see cref="TryOneSided"/>.</summary>
    /// <exception cref="InvalidOperationException">The inputs are out of range.</exception>
    public static double OneSided(int count, double content, double confidence) =>
        TryOneSided(count, content, confidence).Value.Value;

    /// <summary>Natrella's approximation of the one-sided factor.</summary>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The sample is smaller than 2, a share lies outside 0 to 1, or the approximation does not hold for so small a sample.
    /// </exception>
    public static double OneSidedApproximate(int count, double content, double confidence)
    {
        Require(count, content, confidence);
        var (zp, zg) = (NormalQuantile.Of(content), NormalQuantile.Of(confidence));
        var a = 1 - (zg * zg / (2.0 * (count - 1)));
        var b = (zp * zp) - (zg * zg / count);
        return Finite.Require((zp + Math.Sqrt((zp * zp) - (a * b))) / a);
    }

    /// <summary>Howe's two-sided factor.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The sample is smaller than 2, or a share lies outside 0 to 1.</exception>
    public static double TwoSidedHowe(int count, double content, double confidence)
    {
        Require(count, content, confidence);
        var z = NormalQuantile.TwoSided(content);
        var chiSquare = ChiSquare.Quantile(count - 1, 1 - confidence);
        return Finite.Require(z * Math.Sqrt((count - 1) * (1 + (1.0 / count)) / chiSquare));
    }

    /// <summary>Upper one-sided limit, mean + k·s, in the unit of mean and standard deviation.</summary>
    public static double UpperLimit(double mean, double standardDeviation, double factor) =>
        Finite.Require(mean + (factor * standardDeviation));

    /// <summary>Lower one-sided limit, mean − k·s, in the unit of mean and standard deviation.</summary>
    public static double LowerLimit(double mean, double standardDeviation, double factor) =>
        Finite.Require(mean - (factor * standardDeviation));

    private static void Require(int count, double content, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 2);
        NormalQuantile.RequireProbability(content, nameof(content));
        NormalQuantile.RequireProbability(confidence, nameof(confidence));
    }
}
