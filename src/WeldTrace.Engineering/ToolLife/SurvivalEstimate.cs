using MathNet.Numerics.Distributions;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.ToolLife;

/// <summary>One step of a survival estimate.</summary>
/// <param name="At">Length of the failure.</param>
/// <param name="Survival">Part of the tools that survive it.</param>
/// <param name="AtRisk">Tools still in use just before.</param>
public readonly record struct SurvivalStep(Length At, double Survival, int AtRisk);

/// <summary>Survival without an assumed distribution, and plotting positions for the Weibull plot.</summary>
public static class SurvivalEstimate
{
    /// <summary>Product-limit estimate (Kaplan, Meier 1958): at equal lengths failures are taken before censored tools.</summary>
    /// <param name="records">Tools, failed or not.</param>
    /// <returns>One step for each length at which tools failed, shortest first.</returns>
    public static IReadOnlyList<SurvivalStep> ProductLimit(IReadOnlyList<LifeRecord> records)
    {
        ArgumentNullException.ThrowIfNull(records);
        var steps = new List<SurvivalStep>();
        var survival = 1.0;
        foreach (var group in records.Where(r => r.Failed).GroupBy(r => r.Used).OrderBy(g => g.Key))
        {
            var atRisk = records.Count(r => r.Used >= group.Key);
            survival *= 1 - ((double)group.Count() / atRisk);
            steps.Add(new(group.Key, survival, atRisk));
        }

        return steps;
    }

    /// <summary>
    /// Plotting positions of the failures for a probability plot with censored tools: half-way down each step of the product-limit
    /// estimate, <c>p_i = 1 − (S_(i−1) + S_i)/2</c>, as in Meeker and Escobar 1998 (from memory). Without censored tools that is
    /// (i − 1/2)/n.
    /// </summary>
    /// <param name="records">Tools, failed or not.</param>
    /// <returns>Length and failed part of each step, shortest first.</returns>
    public static IReadOnlyList<(Length At, double FailedPart)> PlottingPositions(
        IReadOnlyList<LifeRecord> records
    )
    {
        var before = 1.0;
        var positions = new List<(Length, double)>();
        foreach (var step in ProductLimit(records))
        {
            positions.Add((step.At, 1 - ((before + step.Survival) / 2)));
            before = step.Survival;
        }

        return positions;
    }

    /// <summary>Median rank by Benard's approximation: (i − 0.3)/(n + 0.4).</summary>
    /// <param name="rank">Rank i, 1 to n.</param>
    /// <param name="count">Number n.</param>
    public static double MedianRankBenard(int rank, int count) =>
        (RequireRank(rank, count) - 0.3) / (count + 0.4);

    /// <summary>Exact median rank: the 50 % quantile of the beta distribution (i, n − i + 1).</summary>
    /// <param name="rank">Rank i, 1 to n.</param>
    /// <param name="count">Number n.</param>
    public static double MedianRank(int rank, int count) =>
        Beta.InvCDF(RequireRank(rank, count), count - rank + 1, 0.5);

    private static int RequireRank(int rank, int count) =>
        rank >= 1 && rank <= count
            ? rank
            : throw new ArgumentOutOfRangeException(
                nameof(rank),
                rank,
                "Must lie from 1 to the number."
            );
}
