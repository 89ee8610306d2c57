using MathNet.Numerics;

namespace WeldTrace.Engineering.Statistics;

/// <summary>A time, and whether it ended with a failure.</summary>
internal readonly record struct CensoredTime(double Time, bool Failed);

/// <summary>Maximum likelihood of the two-parameter Weibull distribution with right-censored times, in (ln η, ln β).</summary>
internal sealed class CensoredWeibull
{
    private readonly double[] _logTimes;
    private readonly double[] _logFailures;
    private readonly double _largest;

    private CensoredWeibull(IReadOnlyList<CensoredTime> data)
    {
        _largest = data.Max(d => d.Time);
        _logTimes = [.. data.Select(d => Math.Log(d.Time / _largest))];
        _logFailures = [.. data.Where(d => d.Failed).Select(d => Math.Log(d.Time / _largest))];
    }

    public Solution ShapeSolution { get; private set; } = new(double.NaN, 0, double.NaN);

    public double Shape => ShapeSolution.Value;

    public double LogScale { get; private set; }

    public double Scale => Math.Exp(LogScale) * _largest;

    public double LogLikelihood { get; private set; }

    public double VarianceLogScale { get; private set; }

    public double VarianceLogShape { get; private set; }

    public double CovarianceLog { get; private set; }

    private int Failures => _logFailures.Length;

    /// <summary>Fits; false when the shape equation has no root (fewer than two distinct failures) or does not converge.</summary>
    public static bool TryFit(IReadOnlyList<CensoredTime> data, out CensoredWeibull fit)
    {
        fit = new(data);
        var meanLog = fit._logFailures.Average();
        var own = fit;
        double Equation(double shape) => own.WeightedMeanLog(shape) - (1 / shape) - meanLog;
        if (!RootSearch.TryFindFrom(Equation, 1, upwards: Equation(1) < 0, out var solution))
        {
            return false;
        }

        fit.ShapeSolution = solution;
        fit.LogScale = fit.LogScaleFor(fit.Shape);
        fit.LogLikelihood = fit.LogLikelihoodAt(fit.LogScale, fit.Shape);
        fit.Invert();
        return true;
    }

    /// <summary>Likelihood-ratio interval of the shape, or null when it does not close.</summary>
    public Interval? ShapeInterval(double confidence) =>
        ProfileInterval(Shape, b => LogLikelihoodAt(LogScaleFor(b), b), confidence);

    /// <summary>Likelihood-ratio interval of the scale, or null when it does not close.</summary>
    public Interval? ScaleInterval(double confidence)
    {
        var interval = ProfileInterval(Math.Exp(LogScale), ProfileOfScale, confidence);
        return interval is { } found
            ? new(found.Lower * _largest, found.Upper * _largest, confidence)
            : null;
    }

    /// <summary>z = β·(ln t − ln η) of a time above zero.</summary>
    public double Reduced(double time) => Shape * (Math.Log(time / _largest) - LogScale);

    private double WeightedMeanLog(double shape)
    {
        var (sum, weighted) = (0.0, 0.0);
        foreach (var log in _logTimes)
        {
            var power = Math.Exp(shape * log);
            sum += power;
            weighted += power * log;
        }

        return weighted / sum;
    }

    private double LogScaleFor(double shape) =>
        Math.Log(_logTimes.Sum(log => Math.Exp(shape * log)) / Failures) / shape;

    private double LogLikelihoodAt(double logScale, double shape) =>
        (Failures * (Math.Log(shape) - Math.Log(_largest)))
        + _logFailures.Sum(log => (shape * (log - logScale)) - log)
        - _logTimes.Sum(log => Math.Exp(shape * (log - logScale)));

    private void Invert()
    {
        var (beta, crossed, bend) = (Shape, 0.0, 0.0);
        foreach (var log in _logTimes)
        {
            var z = beta * (log - LogScale);
            var w = Math.Exp(z);
            crossed += w * z;
            bend += (w * z * z) + (w * z);
        }

        bend -= _logFailures.Sum(log => beta * (log - LogScale));
        var (aa, ab) = (beta * beta * Failures, -beta * crossed);
        var determinant = (aa * bend) - (ab * ab);
        VarianceLogScale = bend / determinant;
        VarianceLogShape = aa / determinant;
        CovarianceLog = -ab / determinant;
    }

    private double ProfileOfScale(double scale)
    {
        var logScale = Math.Log(scale);
        double Slope(double shape) =>
            (Failures / shape)
            + _logFailures.Sum(log => log - logScale)
            - _logTimes.Sum(log => Math.Exp(shape * (log - logScale)) * (log - logScale));
        return RootSearch.TryFindFrom(Slope, Shape, upwards: Slope(Shape) > 0, out var best)
            ? LogLikelihoodAt(logScale, best.Value)
            : double.NaN;
    }

    private Interval? ProfileInterval(double best, Func<double, double> profile, double confidence)
    {
        var quantile = NormalQuantile.TwoSided(confidence);
        var level = LogLikelihood - (quantile * quantile / 2);
        double Above(double value) => profile(value) - level;
        return
            RootSearch.TryFindFrom(Above, best, upwards: false, out var lower)
            && RootSearch.TryFindFrom(Above, best, upwards: true, out var upper)
            ? new(lower.Value, upper.Value, confidence)
            : null;
    }

    /// <summary>Γ(1 + order/β), the moment of the unit distribution.</summary>
    public double Moment(int order) => SpecialFunctions.Gamma(1 + (order / Shape));
}
