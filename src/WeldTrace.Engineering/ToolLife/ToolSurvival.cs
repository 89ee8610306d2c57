using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Engineering.ToolLife;

/// <summary>
/// Chances of survival from a fitted life. Bounds by the delta method: for R(t) on <c>u = β·ln(t/η)</c>, for quantiles on ln t_p, for the
/// next length on <c>w = ln(H(t + x) − H(t))</c>, H = (t/η)^β. As in Meeker and Escobar 1998 (from memory), checked on published data.
/// </summary>
public sealed class ToolSurvival
{
    private readonly CensoredWeibull _fit;

    internal ToolSurvival(CensoredWeibull fit) => _fit = fit;

    /// <summary>Probability that a new tool survives a length, zero or more.</summary>
    public double Reliability(Length length) => Math.Exp(-Hazard(length.Metres));

    /// <summary>Two-sided interval of <see cref="Reliability"/>; the length is above zero.</summary>
    public Interval ReliabilityInterval(Length length, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(length.Metres, nameof(length));
        var u = _fit.Reduced(length.Metres);
        var width = TwoSided(confidence) * StandardError(-_fit.Shape, u);
        return new(Math.Exp(-Math.Exp(u + width)), Math.Exp(-Math.Exp(u - width)), confidence);
    }

    /// <summary>Length by which the given part of the tools has failed: η·(−ln(1 − p))^(1/β).</summary>
    /// <param name="failedPart">p, between 0 and 1.</param>
    public Length Quantile(double failedPart) =>
        Length.FromMetres(_fit.Scale * Math.Exp(LogHazardOf(failedPart) / _fit.Shape));

    /// <summary>One-sided lower bound of <see cref="Quantile"/>.</summary>
    /// <param name="failedPart">p, between 0 and 1.</param>
    /// <param name="confidence">One-sided, between 0 and 1.</param>
    public Length QuantileLowerBound(double failedPart, double confidence)
    {
        var error = StandardError(1, -LogHazardOf(failedPart) / _fit.Shape);
        return Quantile(failedPart) * Math.Exp(-OneSided(confidence) * error);
    }

    /// <summary>Probability that a tool that has done <paramref name="used"/> survives <paramref name="next"/> more.</summary>
    public double Conditional(Length used, Length next)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(next.Metres, nameof(next));
        return Math.Exp(Hazard(used.Metres) - Hazard(used.Metres + next.Metres));
    }

    /// <summary>One-sided lower bound of <see cref="Conditional"/>; the next length is above zero.</summary>
    public double ConditionalLowerBound(Length used, Length next, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(next.Metres, nameof(next));
        var (before, after) = (Hazard(used.Metres), Hazard(used.Metres + next.Metres));
        var bendBefore = before > 0 ? before * Math.Log(before) : 0;
        var slope = ((after * Math.Log(after)) - bendBefore) / (after - before);
        var w = Math.Log(after - before);
        return Math.Exp(-Math.Exp(w + (OneSided(confidence) * StandardError(-_fit.Shape, slope))));
    }

    /// <summary>How <see cref="Conditional"/> and its bound are worked out.</summary>
    /// <param name="used">What the tool has done, zero or more.</param>
    /// <param name="next">What it is to do, above zero.</param>
    /// <param name="confidence">One-sided, between 0 and 1.</param>
    public Working ShowConditional(Length used, Length next, double confidence) =>
        Working
            .Of("Chance of surviving the next length", "R(x | t) = exp((t/η)^β − ((t + x)/η)^β)")
            .Input("β", "shape", _fit.Shape)
            .Input("η", "scale", _fit.Scale, "m")
            .Input("t", "welded so far", used.Metres, "m")
            .Input("x", "next length", next.Metres, "m")
            .Input("C", "confidence of the bound", confidence)
            .Step("(t/η)^β", "hazard before", Hazard(used.Metres))
            .Step("((t + x)/η)^β", "hazard after", Hazard(used.Metres + next.Metres))
            .Result("R(x | t)", "chance of surviving it", Conditional(used, next))
            .Result("", "one-sided lower bound", ConditionalLowerBound(used, next, confidence))
            .From(
                "Definition of the conditional reliability; bound by the delta method as in Meeker and Escobar 1998 (from memory), checked on published data."
            )
            .Build();

    /// <summary>Length that a used tool survives with the wanted probability: η·((t/η)^β − ln Rc)^(1/β) − t.</summary>
    /// <param name="used">What it has done, zero or more.</param>
    /// <param name="wantedReliability">Rc, between 0 and 1.</param>
    public Length FurtherLife(Length used, double wantedReliability)
    {
        NormalQuantile.RequireProbability(wantedReliability, nameof(wantedReliability));
        var hazard = Hazard(used.Metres) - Math.Log(wantedReliability);
        return Length.FromMetres((_fit.Scale * Math.Pow(hazard, 1 / _fit.Shape)) - used.Metres);
    }

    /// <summary>
    /// Mean further length of a tool that has done <paramref name="used"/>: ∫ R(s) ds from t on, over R(t), which is
    /// <c>η/β·e^H·Γ(1/β; H)</c> with the upper incomplete gamma function, H = (t/η)^β.
    /// </summary>
    /// <param name="used">What it has done, zero or more.</param>
    public Length MeanResidualLife(Length used)
    {
        var hazard = Hazard(used.Metres);
        var scaled = IncompleteGamma.ScaledUpper(1 / _fit.Shape, hazard);
        return Length.FromMetres(_fit.Scale / _fit.Shape * scaled);
    }

    private static double TwoSided(double confidence) =>
        NormalQuantile.TwoSided(NormalQuantile.RequireProbability(confidence, nameof(confidence)));

    private static double OneSided(double confidence) =>
        NormalQuantile.Of(NormalQuantile.RequireProbability(confidence, nameof(confidence)));

    private static double LogHazardOf(double failedPart) =>
        Math.Log(-Math.Log(1 - NormalQuantile.RequireProbability(failedPart, nameof(failedPart))));

    private double Hazard(double metres)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(metres);
        return Math.Pow(metres / _fit.Scale, _fit.Shape);
    }

    /// <summary>Standard error of a function with these slopes in ln η and ln β.</summary>
    private double StandardError(double bySlopeOfLogScale, double bySlopeOfLogShape) =>
        Math.Sqrt(
            (bySlopeOfLogScale * bySlopeOfLogScale * _fit.VarianceLogScale)
                + (2 * bySlopeOfLogScale * bySlopeOfLogShape * _fit.CovarianceLog)
                + (bySlopeOfLogShape * bySlopeOfLogShape * _fit.VarianceLogShape)
        );
}
