namespace WeldTrace.Web.Components.Drawings;

/// <summary>An axis from zero with round steps (1, 2 or 5 times a power of ten).</summary>
/// <param name="Top">End of the axis, at or above the largest value.</param>
/// <param name="Step">Distance of two ticks.</param>
public sealed record NiceScale(double Top, double Step)
{
    private static readonly int[] Rounds = [1, 2, 5, 10];

    /// <summary>The values of the ticks, zero and the top included.</summary>
    public IEnumerable<double> Ticks =>
        Enumerable.Range(0, (int)Math.Round(Top / Step) + 1).Select(i => i * Step);

    /// <summary>The scale for values from zero to <paramref name="largest"/>, in at most <paramref name="steps"/> steps.</summary>
    public static NiceScale For(double largest, int steps = 6)
    {
        if (!(largest > 0) || !double.IsFinite(largest))
        {
            return new NiceScale(1, 1);
        }

        var raw = largest / steps;
        var power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        var step = Rounds.Select(m => m * power).First(s => s >= raw * (1 - 1e-9));
        return new NiceScale(Math.Ceiling((largest / step) - 1e-9) * step, step);
    }
}
