using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;
using static WeldTrace.Engineering.Statistics.StandardUncertainty;

namespace WeldTrace.Engineering.PressureTesting;

/// <summary>
/// Burst pressure over the maximum expected operating pressure (MEOP), against the burst factor of the design; margin
/// <c>MS = p_burst/(BF·MEOP) − 1</c>. Gauge pressures. The factor is data of the design with its own source.
/// </summary>
public sealed record BurstRatio : IWorked
{
    private BurstRatio(Pressure burst, Pressure uncertainty, Pressure meop, WrittenLimit factor)
    {
        Ratio = burst / meop;
        ExpandedUncertainty = CoverageFactor * (uncertainty / meop);
        Margin = (Ratio / factor.Value) - 1;
        Judgement = Comparison.AtLeast(new(Ratio, "", ExpandedUncertainty), factor);
        Working = Working
            .Of("Burst ratio", "ratio = p_burst/MEOP; MS = ratio/BF − 1")
            .Input("p_burst", "burst pressure", burst.Bar, "bar")
            .Input("u", "its standard uncertainty", uncertainty.Bar, "bar")
            .Input("MEOP", "maximum expected operating pressure", meop.Bar, "bar")
            .Input("BF", "required burst factor", factor.Value)
            .Result("ratio", "burst ratio", Ratio)
            .Result("U", "expanded uncertainty, k = 2", ExpandedUncertainty)
            .Result("MS", "margin of safety", Margin)
            .From("Definition; the factor comes from the design with its own source.")
            .Build();
    }

    /// <summary>Burst pressure over MEOP.</summary>
    public double Ratio { get; }

    /// <summary>Expanded uncertainty of the ratio, coverage factor 2.</summary>
    public double ExpandedUncertainty { get; }

    /// <summary>Margin of safety; zero or more when the factor is reached.</summary>
    public double Margin { get; }

    /// <summary>Judgement against the required factor.</summary>
    public Judgement Judgement { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Evaluates a burst test.</summary>
    /// <param name="burst">Burst pressure, gauge, above zero.</param>
    /// <param name="standardUncertainty">Its standard uncertainty, zero or more.</param>
    /// <param name="meop">MEOP, gauge, above zero.</param>
    /// <param name="requiredFactor">Burst factor, a plain number above zero.</param>
    public static Computed<BurstRatio> Evaluate(
        Pressure burst,
        Pressure standardUncertainty,
        Pressure meop,
        WrittenLimit requiredFactor
    )
    {
        ArgumentNullException.ThrowIfNull(requiredFactor);
        var check = new InputCheck()
            .Positive("burst pressure", burst.Bar, "bar")
            .NotNegative("uncertainty of the burst pressure", standardUncertainty.Bar, "bar")
            .Positive("MEOP", meop.Bar, "bar")
            .Positive("required burst factor", requiredFactor.Value)
            .LimitOf(
                "required burst factor",
                requiredFactor,
                Units.Dimension.Number,
                "as a plain number"
            );
        return check.Compute(() =>
            new BurstRatio(burst, standardUncertainty, meop, requiredFactor)
        );
    }
}
