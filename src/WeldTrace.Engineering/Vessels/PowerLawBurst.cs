using MathNet.Numerics.Integration;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Plastic instability of a closed cylinder, plane strain, von Mises, σ = K·εⁿ with K = su·(e/n)ⁿ: the largest pressure
/// <c>∫ K·εⁿ/(exp(√3·ε) − 1) dε</c> from the outer to the inner strain, over all expansions. Given as p/su.
/// </summary>
internal static class PowerLawBurst
{
    private const int LargestCount = 200;
    private const double Tolerance = 1e-10;
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    public static Solution Solve(double n, Length inner, Length outer)
    {
        double PressureAt(double bulge) => Pressure(n, inner.Metres, outer.Metres, bulge);
        var (low, high) = (1e-6, 2.0);
        var (left, right) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
        var (atLeft, atRight) = (PressureAt(left), PressureAt(right));
        var count = 0;
        while (high - low > Tolerance && count < LargestCount)
        {
            count++;
            if (atLeft > atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - (Golden * (high - low));
                atLeft = PressureAt(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + (Golden * (high - low));
                atRight = PressureAt(right);
            }
        }

        return new(Math.Max(atLeft, atRight), count, high - low);
    }

    /// <summary>Pressure at a strain of the bore, over su.</summary>
    private static double Pressure(double n, double inner, double outer, double boreStrain)
    {
        var bore = inner * Math.Exp(boreStrain * Math.Sqrt(3) / 2);
        var outside = Math.Sqrt((outer * outer) + (bore * bore) - (inner * inner));
        var outsideStrain = 2 / Math.Sqrt(3) * Math.Log(outside / outer);
        var factor = Math.Pow(Math.E / n, n);
        double Integrand(double logStrain)
        {
            var strain = Math.Exp(logStrain);
            return factor * Math.Pow(strain, n + 1) / (Math.Exp(Math.Sqrt(3) * strain) - 1);
        }

        return GaussLegendreRule.Integrate(
            Integrand,
            Math.Log(outsideStrain),
            Math.Log(boreStrain),
            64
        );
    }
}
