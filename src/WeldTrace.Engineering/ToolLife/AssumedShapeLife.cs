using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Engineering.ToolLife;

/// <summary>
/// Lower bound of the scale with an assumed shape, for few or no failures: <c>η_L = (2·Σ t^β/χ²(C; 2r + 2))^(1/β)</c>. Usual form; the shape is
/// an assumption with its own reason.
/// </summary>
public static class AssumedShapeLife
{
    /// <summary>Computes the bound.</summary>
    /// <param name="records">Tools, failed or not, at least one.</param>
    /// <param name="shape">Assumed shape β, above zero.</param>
    /// <param name="confidence">One-sided, between 0 and 1.</param>
    public static Computed<Length> LowerScale(
        IReadOnlyList<LifeRecord> records,
        double shape,
        double confidence
    )
    {
        ArgumentNullException.ThrowIfNull(records);
        var check = new InputCheck()
            .Positive(
                "shortest use",
                records.Select(r => r.Used.Metres).DefaultIfEmpty(0).Min(),
                "m"
            )
            .Between("assumed shape", shape, 0.1, 50)
            .Between("confidence", confidence, 1e-6, 1 - 1e-6);
        return check.Compute(() => Bound(records, shape, confidence));
    }

    /// <summary>Tools to be tested without failure: ⌈ln(1 − C)/(L^β·ln R)⌉.</summary>
    /// <param name="reliability">Reliability R to be shown, between 0 and 1.</param>
    /// <param name="confidence">Confidence C, between 0 and 1.</param>
    /// <param name="lives">Length of each test in lives, above zero.</param>
    /// <param name="shape">Assumed shape β, above zero.</param>
    public static int ToolsWithoutFailure(
        double reliability,
        double confidence,
        double lives = 1,
        double shape = 1
    )
    {
        NormalQuantile.RequireProbability(reliability, nameof(reliability));
        NormalQuantile.RequireProbability(confidence, nameof(confidence));
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lives);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shape);
        var exact = Math.Log(1 - confidence) / (Math.Pow(lives, shape) * Math.Log(reliability));
        return (int)Math.Min(Math.Ceiling(exact - 1e-9), int.MaxValue);
    }

    private static (Length Value, Working Working) Bound(
        IReadOnlyList<LifeRecord> records,
        double shape,
        double confidence
    )
    {
        var failures = records.Count(r => r.Failed);
        var largest = records.Max(r => r.Used.Metres);
        var sum = records.Sum(r => Math.Pow(r.Used.Metres / largest, shape));
        var quantile = ChiSquare.Quantile((2 * failures) + 2, confidence);
        var bound = Length.FromMetres(largest * Math.Pow(2 * sum / quantile, 1 / shape));
        var working = Working
            .Of("Lower bound of tool life, assumed shape", "η_L = (2·Σ t^β/χ²(C; 2r + 2))^(1/β)")
            .Input("n", "tools", records.Count)
            .Input("r", "failed tools", failures)
            .Input("β", "assumed shape", shape)
            .Input("C", "confidence", confidence)
            .Step("χ²", "quantile", quantile)
            .Result("η_L", "lower bound of the scale", bound.Metres, "m")
            .From("Usual form for an assumed shape; the shape needs a reason of its own.")
            .Build();
        return (bound, working);
    }
}
