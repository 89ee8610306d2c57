using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Engineering.Tests.Statistics;

public sealed class ToleranceFactorTests
{
    private const int Steps = 200_000;

    public static TheoryData<int, double, double> Grid
    {
        get
        {
            TheoryData<int, double, double> rows = [];
            foreach (var count in new[] { 2, 3, 7, 40, 500, 10_000 })
            {
                foreach (var content in new[] { 0.5, 0.9, 0.9999 })
                {
                    foreach (var confidence in new[] { 0.01, 0.5, 0.95, 0.99 })
                    {
                        rows.Add(count, content, confidence);
                    }
                }
            }

            return rows;
        }
    }

    /// <summary>Against the definition, by a plain sum of fine steps over the density of s (Simpson's rule), far from where tables end.</summary>
    [Theory]
    [MemberData(nameof(Grid))]
    public void OneSided_Factor_GivesItsConfidence(int count, double content, double confidence)
    {
        var k = ToleranceFactor.OneSided(count, content, confidence);

        Assert.Equal(confidence, Covered(k, count, content), 1e-9);
    }

    private static double Covered(double k, int count, double content)
    {
        var (degrees, root) = (count - 1.0, Math.Sqrt(count));
        var shift = Normal.InvCDF(0, 1, content) * root;
        var logConstant =
            Math.Log(2)
            + (degrees / 2 * Math.Log(degrees / 2))
            - SpecialFunctions.GammaLn(degrees / 2);
        double Part(double w) =>
            Normal.CDF(0, 1, (k * root * w) - shift)
            * Math.Exp(logConstant + ((degrees - 1) * Math.Log(w)) - (degrees * w * w / 2));

        var (low, high) = (
            Math.Max(1e-12, 1 - (10 / Math.Sqrt(degrees))),
            1 + (10 / Math.Sqrt(degrees))
        );
        var step = (high - low) / Steps;
        var sum = Part(low) + Part(high);
        for (var i = 1; i < Steps; i++)
        {
            sum += (i % 2 == 0 ? 2 : 4) * Part(low + (i * step));
        }

        return sum * step / 3;
    }
}
