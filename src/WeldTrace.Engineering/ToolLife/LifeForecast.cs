using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.ToolLife;

/// <summary>
/// What a fitted life says of one tool: chance to survive the next length, its lower bound, mean further life, and the length that it
/// survives with a wanted chance. <c>R(x | t) = exp(H(t) − H(t + x))</c>, <c>H = (t/η)^β</c>; formulas and bounds of <see cref="ToolSurvival"/>.
/// </summary>
public sealed record LifeForecast : IWorked
{
    private const int UsefulFailures = 5;

    private LifeForecast(ToolLifeFit fit, LifeQuestion question)
    {
        var (used, next) = (question.Used, question.Next);
        var survival = fit.Survival;
        Fit = fit;
        Question = question;
        Survives = Finite.Require(survival.Conditional(used, next));
        SurvivesAtLeast = Finite.Require(
            survival.ConditionalLowerBound(used, next, question.Confidence)
        );
        MeanFurtherLife = survival.MeanResidualLife(used);
        FurtherLife = survival.FurtherLife(used, question.WantedChance);
        IsExtrapolated = fit.IsExtrapolated(used + next);
        Working = Show();
    }

    /// <summary>The fit behind it.</summary>
    public ToolLifeFit Fit { get; }

    /// <summary>What was asked.</summary>
    public LifeQuestion Question { get; }

    /// <summary>Chance that the tool survives the next length.</summary>
    public double Survives { get; }

    /// <summary>One-sided lower bound of that chance, delta method.</summary>
    public double SurvivesAtLeast { get; }

    /// <summary>Mean further length until it fails.</summary>
    public Length MeanFurtherLife { get; }

    /// <summary>Further length that it survives with the wanted chance.</summary>
    public Length FurtherLife { get; }

    /// <summary>Whether the length lies outside the lengths of the tools in the fit.</summary>
    public bool IsExtrapolated { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Asks a fit about one tool.</summary>
    /// <param name="fit">Life of tools of the same design.</param>
    /// <param name="question">What the tool has done and is to do.</param>
    public static Computed<LifeForecast> Compute(ToolLifeFit fit, LifeQuestion question)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(question);
        return new InputCheck()
            .NotNegative("metres used", question.Used.Metres, "m")
            .Positive("next length", question.Next.Metres, "m")
            .Between("wanted chance", question.WantedChance, 1e-6, 1 - 1e-6)
            .Between("confidence", question.Confidence, 1e-6, 1 - 1e-6)
            .Compute(() => new LifeForecast(fit, question));
    }

    private Working Show() =>
        Working
            .Of(
                "Survival of the next length",
                "R(x | t) = exp((t/η)^β − ((t + x)/η)^β); m = η/β·exp((t/η)^β)·Γ(1/β, (t/η)^β)"
            )
            .Input("t", "used", Question.Used.Metres, "m")
            .Input("x", "next length", Question.Next.Metres, "m")
            .Input("C", "confidence of the bound", Question.Confidence)
            .Input("Rc", "wanted chance", Question.WantedChance)
            .Step("β", "shape", Fit.Shape)
            .Step("η", "scale", Fit.Scale.Metres, "m")
            .Result("R(x | t)", "chance to survive it", Survives)
            .Result("", "lower bound of that chance", SurvivesAtLeast)
            .Result("m", "mean further life", MeanFurtherLife.Metres, "m")
            .Result("", "further life at the wanted chance", FurtherLife.Metres, "m")
            .From(
                "Meeker and Escobar 1998 (from memory), checked on published data; bound by the delta method."
            )
            .Validity(
                Validity.When(
                    !IsExtrapolated && Fit.Failures >= UsefulFailures,
                    $"The length lies inside those of the fitted tools, and {UsefulFailures} or more of them failed.",
                    "the figure is extrapolated or rests on few failures; inspect before each use."
                )
            )
            .Build();
}

/// <summary>A question about one tool.</summary>
/// <param name="Used">What it has done, zero or more.</param>
/// <param name="Next">What it is to do, above zero.</param>
/// <param name="WantedChance">Chance of survival that is wanted, between 0 and 1.</param>
/// <param name="Confidence">One-sided confidence of the lower bound, between 0 and 1.</param>
public sealed record LifeQuestion(
    Length Used,
    Length Next,
    double WantedChance = 0.95,
    double Confidence = 0.95
);
