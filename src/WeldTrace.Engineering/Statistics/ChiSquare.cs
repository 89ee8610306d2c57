using MathNet.Numerics;

namespace WeldTrace.Engineering.Statistics;

internal static class ChiSquare
{
    /// <summary>Quantile of the chi-square distribution, by root search on the regularised gamma function.</summary>
    public static double Quantile(double degrees, double probability)
    {
        var isUpper = probability > 0.5;
        double Difference(double x) =>
            isUpper
                ? 1 - probability - SpecialFunctions.GammaUpperRegularized(degrees / 2, x / 2)
                : SpecialFunctions.GammaLowerRegularized(degrees / 2, x / 2) - probability;
        var start = Math.Max(degrees, 0.5);
        return RootSearch.TryFindFrom(Difference, start, Difference(start) < 0, out var found)
            ? found.Value
            : throw new ArgumentOutOfRangeException(
                nameof(probability),
                probability,
                "No quantile."
            );
    }
}
