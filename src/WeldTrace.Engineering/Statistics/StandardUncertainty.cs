using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Statistics;

/// <summary>Standard uncertainties in the manner of the GUM (JCGM 100:2008; forms from memory).</summary>
public static class StandardUncertainty
{
    /// <summary>Coverage factor of an expanded uncertainty of about 95 %.</summary>
    public const double CoverageFactor = 2;

    /// <summary>Of a reading with resolution d, taken as uniform over ± d/2: d/√12.</summary>
    /// <param name="resolution">Smallest step of the reading, zero or more.</param>
    public static T FromResolution<T>(T resolution)
        where T : struct, IQuantity<T> => T.FromSi(Math.Abs(resolution.SiValue) / Math.Sqrt(12));

    /// <summary>Of a value whose certificate gives an expanded uncertainty.</summary>
    /// <param name="expanded">Expanded uncertainty, zero or more.</param>
    /// <param name="coverageFactor">Its coverage factor, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not above zero.</exception>
    public static T FromExpanded<T>(T expanded, double coverageFactor = CoverageFactor)
        where T : struct, IQuantity<T>
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(coverageFactor);
        return T.FromSi(Math.Abs(expanded.SiValue) / coverageFactor);
    }

    /// <summary>Root of the sum of squares of independent parts in one unit.</summary>
    public static double Combine(params ReadOnlySpan<double> parts)
    {
        var sum = 0.0;
        foreach (var part in parts)
        {
            sum += part * part;
        }

        return Math.Sqrt(sum);
    }
}
