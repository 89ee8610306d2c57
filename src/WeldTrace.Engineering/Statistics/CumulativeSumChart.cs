namespace WeldTrace.Engineering.Statistics;

/// <summary>One place of a cumulative sum chart.</summary>
/// <param name="Place">Place in the order, from 1.</param>
/// <param name="Upper">Upper sum.</param>
/// <param name="Lower">Lower sum.</param>
/// <param name="IsSignal">Whether one of them exceeds the decision interval.</param>
public readonly record struct CumulativeSum(int Place, double Upper, double Lower, bool IsSignal);

/// <summary>
/// Tabular cumulative sums: <c>S⁺ = max(0, S⁺ + x − target − k)</c>, <c>S⁻ = max(0, S⁻ + target − x − k)</c>, signal above h
/// (NIST/SEMATECH e-Handbook 6.3.2.3).
/// </summary>
/// <param name="Target">Target, in the unit of the values.</param>
/// <param name="Allowance">k, in the unit of the values, zero or more.</param>
/// <param name="DecisionInterval">h, in the unit of the values, above zero.</param>
public sealed record CumulativeSumChart(double Target, double Allowance, double DecisionInterval)
{
    /// <summary>The sums in order.</summary>
    public IReadOnlyList<CumulativeSum> Sums(IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var (sums, upper, lower) = (new List<CumulativeSum>(values.Count), 0.0, 0.0);
        foreach (var value in values)
        {
            upper = Math.Max(0, upper + value - Target - Allowance);
            lower = Math.Max(0, lower + Target - value - Allowance);
            sums.Add(new(sums.Count + 1, upper, lower, Math.Max(upper, lower) > DecisionInterval));
        }

        return sums;
    }
}
