using MathNet.Numerics;

namespace WeldTrace.Engineering.Statistics;

internal static class IncompleteGamma
{
    private const int LargestCount = 500;

    /// <summary>
    /// e^x·Γ(a; x), the upper incomplete gamma function without its exponential fall, so that it neither overflows nor vanishes. Far out by
    /// the continued fraction of Legendre (Abramowitz and Stegun 6.5.31), evaluated forwards as Lentz does.
    /// </summary>
    /// <param name="a">Above zero.</param>
    /// <param name="x">Zero or more.</param>
    public static double ScaledUpper(double a, double x)
    {
        if (x < a + 1)
        {
            return Math.Exp(x)
                * SpecialFunctions.GammaUpperRegularized(a, x)
                * SpecialFunctions.Gamma(a);
        }

        const double tiny = 1e-300;
        var b = x + 1 - a;
        var (c, d) = (1 / tiny, 1 / b);
        var fraction = d;
        for (var i = 1; i <= LargestCount; i++)
        {
            var term = -i * (i - a);
            b += 2;
            d = (term * d) + b;
            d = 1 / (Math.Abs(d) < tiny ? tiny : d);
            c = b + (term / c);
            c = Math.Abs(c) < tiny ? tiny : c;
            var step = d * c;
            fraction *= step;
            if (Math.Abs(step - 1) < 1e-15)
            {
                break;
            }
        }

        return Math.Exp(a * Math.Log(x)) * fraction;
    }
}
