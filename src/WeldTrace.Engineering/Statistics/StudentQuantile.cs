using MathNet.Numerics;

namespace WeldTrace.Engineering.Statistics;

internal static class StudentQuantile
{
    /// <summary>
    /// The t above which the given part of Student's distribution lies, by root search on the regularised beta function: the tail is
    /// I_x(ν/2, 1/2)/2 with x = ν/(ν + t²). Holds far out in the tail, where it is used for outliers.
    /// </summary>
    /// <param name="tail">Part above, above 0, below 0.5.</param>
    /// <param name="degrees">Degrees of freedom ν, 1 or more.</param>
    public static double Above(double tail, double degrees)
    {
        double Missing(double t) =>
            Math.Log(
                SpecialFunctions.BetaRegularized(degrees / 2, 0.5, degrees / (degrees + (t * t)))
            ) - Math.Log(2 * tail);
        return RootSearch.TryFindFrom(Missing, 1, upwards: Missing(1) > 0, out var found)
            ? found.Value
            : throw new ArgumentOutOfRangeException(nameof(tail), tail, "No quantile.");
    }
}
