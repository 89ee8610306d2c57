using WeldTrace.Engineering.Conformity;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.PressureTesting;

/// <summary>
/// Volumetric expansion test: elastic <c>EE = TE − PE</c>, permanent ratio <c>100·PE/TE</c> in %. Limits in use are 10 % (several national
/// rules, read as quoted) and 5 % (from memory); the limit is data of the test. Direct method: subtract the compression of
/// the water, <c>V·p·β</c>, before.
/// </summary>
public sealed record VolumetricExpansion : IWorked
{
    private VolumetricExpansion(
        Volume total,
        Volume permanent,
        double expandedPercent,
        WrittenLimit limit
    )
    {
        (Total, Permanent) = (total, permanent);
        PermanentPercent = 100 * (permanent / total);
        Judgement = Comparison.AtMost(new(PermanentPercent, "%", expandedPercent), limit);
        Working = Working
            .Of("Volumetric expansion", "EE = TE − PE; ratio = 100·PE/TE")
            .Input("TE", "total expansion", total.CubicCentimetres, "cm³")
            .Input("PE", "permanent expansion", permanent.CubicCentimetres, "cm³")
            .Input("U", "expanded uncertainty of the ratio", expandedPercent, "%")
            .Step("EE", "elastic expansion", Elastic.CubicCentimetres, "cm³")
            .Result("ratio", "permanent expansion", PermanentPercent, "%")
            .From("Gas cylinder practice; the limit comes with the test.")
            .Build();
    }

    /// <summary>Expansion at test pressure.</summary>
    public Volume Total { get; }

    /// <summary>Expansion that stays after release.</summary>
    public Volume Permanent { get; }

    /// <summary>Expansion that goes back; compare with <see cref="Vessels.ElasticExpansion"/>: a large difference points to a wrong volume, trapped air or a leak.</summary>
    public Volume Elastic => Total - Permanent;

    /// <summary>Permanent in per cent of total expansion.</summary>
    public double PermanentPercent { get; }

    /// <summary>Judgement of the ratio.</summary>
    public Judgement Judgement { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Total expansion by the direct method: water forced in less its compression V·p·β.</summary>
    /// <param name="waterIn">Water forced in.</param>
    /// <param name="volume">Volume of the vessel.</param>
    /// <param name="pressure">Test pressure, gauge.</param>
    /// <param name="compressibilityPerPascal">β in 1/Pa; about 4.5e-10 at 20 °C, take tables for acceptance.</param>
    public static Volume TotalFromWater(
        Volume waterIn,
        Volume volume,
        Pressure pressure,
        double compressibilityPerPascal
    ) => waterIn - (volume * (pressure.Pascals * compressibilityPerPascal));

    /// <summary>Evaluates a test.</summary>
    /// <param name="total">Total expansion, above zero.</param>
    /// <param name="permanent">Permanent expansion, zero or more, at most the total.</param>
    /// <param name="expandedUncertaintyPercent">Expanded uncertainty of the ratio in %, zero or more.</param>
    /// <param name="limit">Largest permanent ratio in %.</param>
    public static Computed<VolumetricExpansion> Evaluate(
        Volume total,
        Volume permanent,
        double expandedUncertaintyPercent,
        WrittenLimit limit
    )
    {
        var check = new InputCheck()
            .Positive("total expansion", total.CubicCentimetres, "cm³")
            .NotNegative("permanent expansion", permanent.CubicCentimetres, "cm³")
            .NotNegative("uncertainty of the ratio", expandedUncertaintyPercent, "%")
            .LimitOf("limit", limit, Units.Dimension.Number, "in %")
            .Require(
                permanent <= total,
                RefusalReason.OutOfRange,
                "permanent expansion",
                "It is larger than the total expansion.",
                "Check both burette readings."
            );
        return check.Compute(() =>
            new VolumetricExpansion(total, permanent, expandedUncertaintyPercent, limit)
        );
    }
}
