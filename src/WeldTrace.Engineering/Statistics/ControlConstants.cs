using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace WeldTrace.Engineering.Statistics;

/// <summary>
/// Constants of control charts with 3-sigma limits for subgroups of n: d2 and d3 are mean and standard deviation of the range of n
/// standard normal values, c4 the bias of s. Computed from the distribution of the range; printed tables carry 3 decimals.
/// </summary>
public sealed record ControlConstants
{
    private const double Reach = 9;

    private ControlConstants(int size)
    {
        Size = size;
        D2 = RangeMoment(size, _ => 1);
        D3 = Math.Sqrt(RangeMoment(size, w => 2 * w) - (D2 * D2));
        C4 =
            Math.Sqrt(2.0 / (size - 1))
            * Math.Exp(
                SpecialFunctions.GammaLn(size / 2.0) - SpecialFunctions.GammaLn((size - 1) / 2.0)
            );
    }

    /// <summary>Size of the subgroup.</summary>
    public int Size { get; }

    /// <summary>Mean of the range.</summary>
    public double D2 { get; }

    /// <summary>Standard deviation of the range.</summary>
    public double D3 { get; }

    /// <summary>Bias of the standard deviation.</summary>
    public double C4 { get; }

    /// <summary>Limits of means from ranges, 3/(d2·√n).</summary>
    public double A2 => 3 / (D2 * Math.Sqrt(Size));

    /// <summary>Limits of means from standard deviations, 3/(c4·√n).</summary>
    public double A3 => 3 / (C4 * Math.Sqrt(Size));

    /// <summary>Lower limit of standard deviations.</summary>
    public double B3 => Math.Max(0, 1 - DeviationWidth);

    /// <summary>Upper limit of standard deviations.</summary>
    public double B4 => 1 + DeviationWidth;

    /// <summary>Lower limit of ranges.</summary>
    public double LowerRangeFactor => Math.Max(0, 1 - (3 * D3 / D2));

    /// <summary>Upper limit of ranges (D4).</summary>
    public double UpperRangeFactor => 1 + (3 * D3 / D2);

    /// <summary>Limits of individual values from ranges, 3/d2.</summary>
    public double E2 => 3 / D2;

    private double DeviationWidth => 3 * Math.Sqrt(1 - (C4 * C4)) / C4;

    /// <summary>Constants for a subgroup size from 2 to 25.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The size is outside 2 to 25.</exception>
    public static ControlConstants For(int size)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(size, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(size, 25);
        return Known[size - 2].Value;
    }

    private static readonly Lazy<ControlConstants>[] Known =
    [
        .. Enumerable.Range(2, 24).Select(size => new Lazy<ControlConstants>(() => new(size))),
    ];

    /// <summary>∫ weight(w)·P(range &gt; w) dw; weight 1 gives the mean, 2w the mean square.</summary>
    private static double RangeMoment(int size, Func<double, double> weight) =>
        Panels(w => weight(w) * (1 - RangeDistribution(size, w)), 0, Reach + 2);

    private static double RangeDistribution(int size, double range) =>
        Panels(
            x =>
                size
                * Normal.PDF(0, 1, x)
                * Math.Pow(Normal.CDF(0, 1, x + range) - Normal.CDF(0, 1, x), size - 1),
            -Reach,
            Reach
        );

    private static double Panels(Func<double, double> function, double low, double high)
    {
        const int count = 6;
        var width = (high - low) / count;
        return Enumerable
            .Range(0, count)
            .Sum(i =>
                GaussLegendreRule.Integrate(
                    function,
                    low + (i * width),
                    low + ((i + 1) * width),
                    16
                )
            );
    }
}
