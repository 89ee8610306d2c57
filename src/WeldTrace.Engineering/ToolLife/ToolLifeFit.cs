using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Statistics;

namespace WeldTrace.Engineering.ToolLife;

/// <summary>
/// Weibull life of tools with right-censored tools, by maximum likelihood: <c>R(t) = exp(−(t/η)^β)</c>; shape from
/// <c>Σ t^β·ln t/Σ t^β − 1/β − Σ_f ln t/r = 0</c>, scale <c>η = (Σ t^β/r)^(1/β)</c>; standard errors from the observed information in
/// (ln η, ln β). One failure mode per fit; other endings count as censored. At least two distinct failure lengths; with fewer
/// than 10 failures prefer the likelihood-ratio bounds. Method as in NIST/SEMATECH e-Handbook 8.4.1.3.
/// </summary>
public sealed record ToolLifeFit : IWorked
{
    private const int UsefulFailures = 5;
    private readonly CensoredWeibull _fit;
    private readonly double _shortest;
    private readonly double _longest;

    private ToolLifeFit(IReadOnlyList<LifeRecord> records, CensoredWeibull fit)
    {
        _fit = fit;
        (_shortest, _longest) = (records.Min(r => r.Used.Metres), records.Max(r => r.Used.Metres));
        Count = records.Count;
        Failures = records.Count(r => r.Failed);
        Working = Show();
    }

    /// <summary>Tools in the fit.</summary>
    public int Count { get; }

    /// <summary>Failed tools in the fit.</summary>
    public int Failures { get; }

    /// <summary>Shape β: below 1 early failures, 1 chance, above 1 wear.</summary>
    public double Shape => _fit.Shape;

    /// <summary>Scale η: the length that 36.8 % of the tools survive.</summary>
    public Length Scale => Length.FromMetres(_fit.Scale);

    /// <summary>Largest log-likelihood, lengths in metres.</summary>
    public double LogLikelihood => _fit.LogLikelihood;

    /// <summary>Standard error of the scale.</summary>
    public Length ScaleStandardError => Scale * Math.Sqrt(_fit.VarianceLogScale);

    /// <summary>Standard error of the shape.</summary>
    public double ShapeStandardError => Shape * Math.Sqrt(_fit.VarianceLogShape);

    /// <summary>Covariance of ln η and ln β.</summary>
    public double CovarianceOfLogs => _fit.CovarianceLog;

    /// <summary>Akaike's criterion, 2·2 − 2·ln L.</summary>
    public double Aic => 4 - (2 * LogLikelihood);

    /// <summary>Akaike's criterion corrected for small samples; null for three tools or fewer.</summary>
    public double? AicCorrected => Count > 3 ? Aic + (12.0 / (Count - 3)) : null;

    /// <summary>Bayesian criterion, 2·ln n − 2·ln L.</summary>
    public double Bic => (2 * Math.Log(Count)) - (2 * LogLikelihood);

    /// <summary>Mean life, η·Γ(1 + 1/β).</summary>
    public Length MeanLife => Scale * _fit.Moment(1);

    /// <summary>Standard deviation of life.</summary>
    public Length LifeStandardDeviation =>
        Scale * Math.Sqrt(_fit.Moment(2) - Math.Pow(_fit.Moment(1), 2));

    /// <summary>How the shape equation was solved.</summary>
    public Solution ShapeSolution => _fit.ShapeSolution;

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Fits a life distribution.</summary>
    /// <param name="records">Failed and censored tools of one design and one failure mode.</param>
    public static Computed<ToolLifeFit> Fit(IReadOnlyList<LifeRecord> records)
    {
        ArgumentNullException.ThrowIfNull(records);
        var check = new InputCheck()
            .Positive(
                "shortest use",
                records.Select(r => r.Used.Metres).DefaultIfEmpty(1).Min(),
                "m"
            )
            .Positive(
                "longest use",
                records.Select(r => r.Used.Metres).DefaultIfEmpty(1).Max(),
                "m"
            )
            .Require(
                records.Where(r => r.Failed).Select(r => r.Used).Distinct().Count() >= 2,
                RefusalReason.TooFewData,
                "failed tools",
                "A fit needs at least two failures at different lengths.",
                "Use the bound with an assumed shape until there are more failures."
            );
        if (!check.IsClean)
        {
            return check.Refused<ToolLifeFit>();
        }

        var data = records.Select(r => new CensoredTime(r.Used.Metres, r.Failed)).ToList();
        return CensoredWeibull.TryFit(data, out var fit)
            ? Computed.Of(new ToolLifeFit(records, fit))
            : Computed.Refused<ToolLifeFit>(
                new Refusal(
                    RefusalReason.NoConvergence,
                    "failed tools",
                    "The shape of the distribution could not be found.",
                    "Check the recorded lengths; they may be nearly equal."
                )
            );
    }

    /// <summary>Interval of the scale by the log-normal approximation, η·exp(± z·se(ln η)).</summary>
    /// <param name="confidence">Two-sided, between 0 and 1.</param>
    public LengthInterval ScaleInterval(double confidence)
    {
        var factor = Math.Exp(TwoSided(confidence) * Math.Sqrt(_fit.VarianceLogScale));
        return new(Scale / factor, Scale * factor, confidence);
    }

    /// <summary>Interval of the shape by the log-normal approximation, β·exp(± z·se(ln β)).</summary>
    /// <param name="confidence">Two-sided, between 0 and 1.</param>
    public Interval ShapeInterval(double confidence)
    {
        var factor = Math.Exp(TwoSided(confidence) * Math.Sqrt(_fit.VarianceLogShape));
        return new(Shape / factor, Shape * factor, confidence);
    }

    /// <summary>Likelihood-ratio interval of the shape; null when the data do not bound it.</summary>
    /// <param name="confidence">Two-sided, between 0 and 1.</param>
    public Interval? ShapeLikelihoodInterval(double confidence)
    {
        NormalQuantile.RequireProbability(confidence, nameof(confidence));
        return _fit.ShapeInterval(confidence);
    }

    /// <summary>Likelihood-ratio interval of the scale; null when the data do not bound it.</summary>
    /// <param name="confidence">Two-sided, between 0 and 1.</param>
    public LengthInterval? ScaleLikelihoodInterval(double confidence)
    {
        NormalQuantile.RequireProbability(confidence, nameof(confidence));
        return _fit.ScaleInterval(confidence) is { } found
            ? new(Length.FromMetres(found.Lower), Length.FromMetres(found.Upper), confidence)
            : null;
    }

    /// <summary>Whether a length lies outside the lengths of the tools in the fit: what is said about it is extrapolated.</summary>
    public bool IsExtrapolated(Length length) =>
        length.Metres < _shortest || length.Metres > _longest;

    /// <summary>Chances of survival that follow from this fit.</summary>
    public ToolSurvival Survival => new(_fit);

    private static double TwoSided(double confidence) =>
        NormalQuantile.TwoSided(NormalQuantile.RequireProbability(confidence, nameof(confidence)));

    private Working Show() =>
        Working
            .Of(
                "Weibull life of tools, right-censored",
                "Σ t^β·ln t/Σ t^β − 1/β − Σ_f ln t/r = 0; η = (Σ t^β/r)^(1/β); R(t) = exp(−(t/η)^β)"
            )
            .Input("n", "tools", Count)
            .Input("r", "failed tools", Failures)
            .Input("", "shortest use", _shortest, "m")
            .Input("", "longest use", _longest, "m")
            .Step("", "steps of the solution", ShapeSolution.Iterations)
            .Step("", "residual of the shape equation", ShapeSolution.Residual)
            .Step("ln L", "log-likelihood", LogLikelihood)
            .Result("β", "shape", Shape)
            .Result("η", "scale", Scale.Metres, "m")
            .Result("se(β)", "standard error of the shape", ShapeStandardError)
            .Result("se(η)", "standard error of the scale", ScaleStandardError.Metres, "m")
            .Result("", "mean life", MeanLife.Metres, "m")
            .From(
                "Maximum likelihood; checked on NIST/SEMATECH e-Handbook 8.4.1.3 and other published data."
            )
            .Validity(
                Validity.When(
                    Failures >= UsefulFailures,
                    $"There are at least {UsefulFailures} failed tools.",
                    "the bounds are wide and rough; take the likelihood-ratio ones."
                )
            )
            .Build();
}
