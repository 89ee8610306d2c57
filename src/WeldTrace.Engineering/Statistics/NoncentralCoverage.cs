using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace WeldTrace.Engineering.Statistics;

/// <summary>
/// Confidence with which mean + k·s of a normal sample lies above a part of the population: <c>∫ Φ(k·√n·w − z_p·√n)·f(w) dw</c>, f the
/// density of w = s/σ. By Gauss and Legendre's rule over the rise of Φ and over what lies above it.
/// </summary>
internal sealed class NoncentralCoverage
{
    private const double Reach = 9;
    private const int MostSteps = 20;

    private static readonly GaussLegendreRule Rule = new(-1, 1, 48);
    private static readonly double[] Nodes = Rule.Abscissas;
    private static readonly double[] Weights = Rule.Weights;

    private readonly double _root;
    private readonly double _shift;
    private readonly double _degrees;
    private readonly double _logConstant;
    private readonly double _low;
    private readonly double _high;

    public NoncentralCoverage(int count, double content)
    {
        _root = Math.Sqrt(count);
        _shift = NormalQuantile.Of(content) * _root;
        _degrees = count - 1.0;
        _logConstant =
            Math.Log(2)
            + (_degrees / 2 * Math.Log(_degrees / 2))
            - SpecialFunctions.GammaLn(_degrees / 2);
        var spread = Reach / Math.Sqrt(_degrees);
        (_low, _high) = (Math.Max(0, 1 - spread), 1 + spread);
    }

    /// <summary>The factor that gives a confidence: by Newton's steps, and where they fail by bracketing.</summary>
    public bool TrySolve(double confidence, out Solution found)
    {
        var k = Start(confidence);
        for (var step = 1; step <= MostSteps; step++)
        {
            var (at, slope) = At(k);
            var change = (at - confidence) / slope;
            if (!double.IsFinite(change) || Math.Abs(change) > 0.5 * (1 + Math.Abs(k)))
            {
                break;
            }

            k -= change;
            // The steps converge quadratically: after one this small, nothing is left that a number can hold.
            if (Math.Abs(change) <= 1e-7 * (1 + Math.Abs(k)))
            {
                found = new Solution(k, step, Math.Abs(At(k).Confidence - confidence));
                return true;
            }
        }

        double Missing(double factor) => At(factor).Confidence - confidence;
        if (Missing(0) <= 0)
        {
            return RootSearch.TryFindFrom(Missing, 1, Missing(1) < 0, out found!);
        }

        // Little confidence in half of the population is reached below the mean.
        double Mirrored(double factor) => Missing(-factor);
        var isFound = RootSearch.TryFindFrom(Mirrored, 1, Mirrored(1) > 0, out found!);
        found = found with { Value = -found.Value };
        return isFound;
    }

    /// <summary>Natrella's approximation where it holds, else the one for a known standard deviation.</summary>
    private double Start(double confidence)
    {
        var (part, tail) = (_shift / _root, NormalQuantile.Of(confidence));
        var a = 1 - (tail * tail / (2 * _degrees));
        var b = (part * part) - (tail * tail / (_degrees + 1));
        var inner = (part * part) - (a * b);
        return a > 0 && inner >= 0
            ? (part + (Math.Sign(tail) * Math.Sqrt(inner))) / a
            : part + (tail / _root);
    }

    /// <summary>Confidence that a factor gives, and how fast it rises with the factor.</summary>
    public (double Confidence, double Slope) At(double k)
    {
        var rate = k * _root;
        var width = Reach / Math.Max(Math.Abs(rate), 1e-9);
        var turn = rate == 0 ? _low : _shift / rate;
        var from = Math.Clamp(turn - width, _low, _high);
        var to = Math.Clamp(turn + width, _low, _high);
        var sum = (Confidence: 0.0, Slope: 0.0);
        foreach (
            var (a, b) in (ReadOnlySpan<(double, double)>)[(_low, from), (from, to), (to, _high)]
        )
        {
            // Below its rise, Φ is nothing.
            if (b > a && !(rate > 0 && b <= from && from < to))
            {
                Add(ref sum, rate, a, b);
            }
        }

        return sum;
    }

    private void Add(ref (double Confidence, double Slope) sum, double rate, double a, double b)
    {
        var (half, middle) = ((b - a) / 2, (a + b) / 2);
        for (var i = 0; i < Nodes.Length; i++)
        {
            var w = middle + (half * Nodes[i]);
            var z = (rate * w) - _shift;
            var part = half * Weights[i] * Density(w);
            sum.Confidence += part * Normal.CDF(0, 1, z);
            sum.Slope += part * _root * w * Normal.PDF(0, 1, z);
        }
    }

    private double Density(double w) =>
        Math.Exp(_logConstant + ((_degrees - 1) * Math.Log(w)) - (_degrees * w * w / 2));
}
