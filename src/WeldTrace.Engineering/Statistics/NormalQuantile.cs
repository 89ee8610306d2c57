using MathNet.Numerics.Distributions;

namespace WeldTrace.Engineering.Statistics;

internal static class NormalQuantile
{
    public static double Of(double probability) => Normal.InvCDF(0, 1, probability);

    public static double TwoSided(double confidence) => Of((1 + confidence) / 2);

    public static double RequireProbability(double value, string name) =>
        value is > 0 and < 1
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "Must lie between 0 and 1.");
}
