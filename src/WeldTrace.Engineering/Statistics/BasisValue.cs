using MathNet.Numerics.Distributions;

namespace WeldTrace.Engineering.Statistics;

/// <summary>Kind of basis value; confidence 95 % for both.</summary>
public enum Basis
{
    /// <summary>99 % of the population lie above it.</summary>
    A,

    /// <summary>90 % of the population lie above it.</summary>
    B,
}

/// <summary>
/// Lower basis values of strengths and burst pressures: normal <c>mean − k·s</c>; Weibull <c>q·exp(−V/(β·√n))</c>,
/// <c>V_B = 3.803 + exp(1.79 − 0.516·ln n + 5.1/(n − 1))</c>, <c>V_A = 6.649 + exp(2.55 − 0.526·ln n + 4.76/n)</c> (CMH-17, from memory, checked on
/// STAT17 results); distribution-free by ranks. Test for outliers and normality first.
/// </summary>
public static class BasisValue
{
    private const double Confidence = 0.95;

    /// <summary>Part of the population that lies above.</summary>
    public static double ContentOf(Basis basis) =>
        basis switch
        {
            Basis.A => 0.99,
            Basis.B => 0.90,
            _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Unknown basis."),
        };

    /// <summary>Basis value of a normal sample, in the unit of the values.</summary>
    public static Computed<double> Normal(Sample sample, Basis basis)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var factor = ToleranceFactor.OneSided(sample.Count, ContentOf(basis), Confidence);
        var value = sample.Mean - (factor * sample.StandardDeviation);
        return Computed.Of(value, Show(sample, basis, "mean − k·s", "k", factor, value));
    }

    /// <summary>Basis value of a Weibull sample, in the unit of the values, which are above zero.</summary>
    public static Computed<double> Weibull(Sample sample, Basis basis)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var fitted = WeibullSample.Fit(sample);
        if (fitted.IsRefused)
        {
            return Computed.Refused<double>(fitted.Refusals);
        }

        var (fit, n) = (fitted.Value, (double)sample.Count);
        var v =
            basis == Basis.B
                ? 3.803 + Math.Exp(1.79 - (0.516 * Math.Log(n)) + (5.1 / (n - 1)))
                : 6.649 + Math.Exp(2.55 - (0.526 * Math.Log(n)) + (4.76 / n));
        var quantile = fit.Scale * Math.Pow(-Math.Log(ContentOf(basis)), 1 / fit.Shape);
        var value = quantile * Math.Exp(-v / (fit.Shape * Math.Sqrt(n)));
        return Computed.Of(value, Show(sample, basis, "q·exp(−V/(β·√n))", "V", v, value));
    }

    /// <summary>Smallest sample for which its r-th smallest value is a lower bound with 95 % confidence.</summary>
    /// <param name="content">Part of the population above, between 0 and 1.</param>
    /// <param name="rank">r, 1 or more.</param>
    public static int SmallestSample(double content, int rank)
    {
        NormalQuantile.RequireProbability(content, nameof(content));
        ArgumentOutOfRangeException.ThrowIfLessThan(rank, 1);
        var count = rank;
        while (1 - Binomial.CDF(1 - content, count, rank - 1) < Confidence)
        {
            count++;
        }

        return count;
    }

    private static Working Show(
        Sample sample,
        Basis basis,
        string formula,
        string symbol,
        double factor,
        double value
    ) =>
        Working
            .Of($"{basis}-basis value", formula)
            .Input("n", "sample size", sample.Count)
            .Step("", "mean", sample.Mean)
            .Step("s", "standard deviation", sample.StandardDeviation)
            .Step(symbol, "factor", factor)
            .Result(basis.ToString(), "basis value", value)
            .From("CMH-17 (from memory; checked on STAT17 results as quoted).")
            .Build();
}
