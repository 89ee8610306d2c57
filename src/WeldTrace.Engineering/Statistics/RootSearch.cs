namespace WeldTrace.Engineering.Statistics;

/// <summary>Root of a continuous function inside a bracket, by regula falsi with halving (Illinois) and bisection.</summary>
internal static class RootSearch
{
    private const int LargestCount = 300;
    private const double Tolerance = 1e-15;

    /// <summary>Finds the root between two places where the function has different signs.</summary>
    public static bool TryFind(
        Func<double, double> function,
        double low,
        double high,
        out Solution solution
    )
    {
        var (atLow, atHigh) = (function(low), function(high));
        solution = new(double.NaN, 0, double.NaN);
        if (double.IsNaN(atLow) || double.IsNaN(atHigh) || Sign(atLow) * Sign(atHigh) > 0)
        {
            return false;
        }

        var (count, kept, middle, atMiddle) = (0, 0, low, atLow);
        while (count < LargestCount && high - low > Tolerance * (Math.Abs(low) + Math.Abs(high)))
        {
            count++;
            middle =
                count % 3 == 0
                    ? (low + high) / 2
                    : ((low * atHigh) - (high * atLow)) / (atHigh - atLow);
            if (!(middle > low && middle < high))
            {
                middle = (low + high) / 2;
            }

            atMiddle = function(middle);
            if (atMiddle == 0 || middle == low || middle == high)
            {
                break;
            }

            if (Sign(atMiddle) == Sign(atHigh))
            {
                (high, atHigh) = (middle, atMiddle);
                atLow = kept == 1 ? atLow / 2 : atLow;
                kept = 1;
            }
            else
            {
                (low, atLow) = (middle, atMiddle);
                atHigh = kept == -1 ? atHigh / 2 : atHigh;
                kept = -1;
            }
        }

        solution = new(middle, count, Math.Abs(atMiddle));
        return double.IsFinite(middle) && count < LargestCount;
    }

    /// <summary>Moves from a start by growing factors until the sign changes, then finds the root; for positive unknowns.</summary>
    public static bool TryFindFrom(
        Func<double, double> function,
        double start,
        bool upwards,
        out Solution solution
    )
    {
        var (here, factor) = (start, 1.1);
        var sign = Sign(function(start));
        for (var step = 0; step < 60; step++)
        {
            var next = upwards ? here * factor : here / factor;
            if (Sign(function(next)) != sign)
            {
                return TryFind(function, Math.Min(here, next), Math.Max(here, next), out solution);
            }

            here = next;
            factor = Math.Min(factor * 1.3, 4);
        }

        solution = new(double.NaN, 60, double.NaN);
        return false;
    }

    /// <summary>Sign of a number; 0 for one that is none, which ends the search.</summary>
    private static int Sign(double value) => double.IsNaN(value) ? 0 : Math.Sign(value);
}
