using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Burst pressure of a closed cylinder by the usual formulas, for a sound, uniform wall. Mean diameter <c>2·su·t/Dm</c>, Barlow
/// <c>2·su·t/Do</c>, Faupel <c>2/√3·sy·ln k·(2 − sy/su)</c>, Svensson <c>su·0.25/(n + 0.227)·(e/n)ⁿ·ln k</c> (from memory), thin power law
/// <c>2·su/√3^(n+1)·t/rm</c>, exact power law. Each times the weld factor.
/// </summary>
public sealed record CylinderBurst : IWorked
{
    private CylinderBurst(BurstMaterial material, Length insideDiameter, Length thickness)
    {
        var (su, sy, n) = (material.Ultimate, material.Yield, material.HardeningExponent);
        var mean = insideDiameter + thickness;
        var outside = insideDiameter + (thickness * 2);
        var logRatio = Math.Log(outside / insideDiameter);
        var weld = material.WeldFactor;
        MeanDiameter = su * (weld * 2 * (thickness / mean));
        Barlow = su * (weld * 2 * (thickness / outside));
        Faupel = sy * (weld * 2 / Math.Sqrt(3) * logRatio * (2 - (sy / su)));
        Svensson = su * (weld * 0.25 / (n + 0.227) * Math.Pow(Math.E / n, n) * logRatio);
        ThinPowerLaw = su * (weld * 2 / Math.Pow(Math.Sqrt(3), n + 1) * (2 * (thickness / mean)));
        Exact = PowerLawBurst.Solve(n, insideDiameter / 2, outside / 2);
        ExactPowerLaw = su * (weld * Exact.Value);
        Working = Show(material, insideDiameter, thickness);
    }

    /// <summary>Mean diameter formula; no hardening, the usual lower estimate.</summary>
    public Pressure MeanDiameter { get; }

    /// <summary>Barlow, outside diameter; the most careful.</summary>
    public Pressure Barlow { get; }

    /// <summary>Faupel; made for steels and thick walls.</summary>
    public Pressure Faupel { get; }

    /// <summary>Svensson.</summary>
    public Pressure Svensson { get; }

    /// <summary>Thin wall, von Mises, power law.</summary>
    public Pressure ThinPowerLaw { get; }

    /// <summary>Any wall, von Mises, power law: largest pressure over all expansions, found by search.</summary>
    public Pressure ExactPowerLaw { get; }

    /// <summary>How the search of <see cref="ExactPowerLaw"/> ended; its value is p/su.</summary>
    public Statistics.Solution Exact { get; }

    /// <summary>Lowest of the predictions.</summary>
    public Pressure Lowest => All.Min();

    /// <summary>Highest of the predictions.</summary>
    public Pressure Highest => All.Max();

    /// <inheritdoc/>
    public Working Working { get; }

    private Pressure[] All => [MeanDiameter, Barlow, Faupel, Svensson, ThinPowerLaw, ExactPowerLaw];

    /// <summary>Predicts the burst pressure.</summary>
    /// <param name="material">Strength of the wall.</param>
    /// <param name="insideDiameter">Inside diameter, above zero.</param>
    /// <param name="thickness">Wall, above zero.</param>
    public static Computed<CylinderBurst> Compute(
        BurstMaterial material,
        Length insideDiameter,
        Length thickness
    )
    {
        ArgumentNullException.ThrowIfNull(material);
        var check = material
            .Check(new InputCheck())
            .Positive("inside diameter", insideDiameter.Millimetres, "mm")
            .Positive("wall", thickness.Millimetres, "mm")
            .Require(
                insideDiameter.Metres <= 0 || thickness.Metres / 5 <= insideDiameter.Metres,
                RefusalReason.OutsideValidity,
                "wall",
                "It is more than five inside diameters.",
                "Check the units of diameter and wall."
            );
        return check.Compute(() => new CylinderBurst(material, insideDiameter, thickness));
    }

    private Working Show(BurstMaterial material, Length insideDiameter, Length thickness) =>
        Working
            .Of(
                "Burst pressure of a cylinder",
                "mean diameter 2·su·t/Dm; Barlow 2·su·t/Do; Faupel 2/√3·sy·ln k·(2 − sy/su); Svensson su·0.25/(n + 0.227)·(e/n)ⁿ·ln k; power law max ∫ K·εⁿ/(exp(√3·ε) − 1) dε; each × weld factor"
            )
            .Input("sy", "yield strength", material.Yield.Megapascals, "MPa")
            .Input("su", "ultimate strength", material.Ultimate.Megapascals, "MPa")
            .Input("n", "hardening exponent", material.HardeningExponent)
            .Input("", "weld factor", material.WeldFactor)
            .Input("Di", "inside diameter", insideDiameter.Millimetres, "mm")
            .Input("t", "wall", thickness.Millimetres, "mm")
            .Step("", "steps of the search", Exact.Iterations)
            .Step("", "strain left between the last two places", Exact.Residual)
            .Result("", "mean diameter", MeanDiameter.Megapascals, "MPa")
            .Result("", "Barlow", Barlow.Megapascals, "MPa")
            .Result("", "Faupel", Faupel.Megapascals, "MPa")
            .Result("", "Svensson", Svensson.Megapascals, "MPa")
            .Result("", "thin power law", ThinPowerLaw.Megapascals, "MPa")
            .Result("", "exact power law", ExactPowerLaw.Megapascals, "MPa")
            .From("Usual formulas; Svensson 1958 from memory. A burst test decides.")
            .Build();
}
