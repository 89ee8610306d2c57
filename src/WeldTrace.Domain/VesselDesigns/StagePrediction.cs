using WeldTrace.Engineering;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Vessels;

namespace WeldTrace.Domain.VesselDesigns;

/// <summary>What the wall is expected to do at a stage; a first estimate without bending at ends, offsets and openings.</summary>
/// <param name="Stage">Stage.</param>
/// <param name="Stress">Thin-wall stress.</param>
/// <param name="Margin">Allowable stress over hoop stress, less one; null without pressure.</param>
/// <param name="Expansion">Elastic growth of the inner volume; null when it can't be computed.</param>
public sealed record StagePrediction(
    PressureStage Stage,
    ThinWallStress Stress,
    MarginOfSafety? Margin,
    ElasticExpansion? Expansion
)
{
    /// <summary>Young's modulus of aluminium alloys, about (handbook value).</summary>
    public static Pressure Modulus { get; } = Pressure.FromMegapascals(69_000);

    /// <summary>Poisson's ratio of aluminium alloys, about (handbook value).</summary>
    public const double PoissonRatio = 0.33;

    /// <summary>How everything was worked out.</summary>
    public IReadOnlyList<Working> Workings =>
        [
            Stress.Working,
            .. Margin is null ? [] : new[] { Margin.Working },
            .. Expansion is null ? [] : new[] { Expansion.Working },
        ];

    /// <summary>Predicts a stage.</summary>
    /// <param name="content">Design that was checked.</param>
    /// <param name="stage">One of its stages.</param>
    public static StagePrediction Of(DesignContent content, PressureStage stage)
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(stage);
        var target = content.Pressures.Target(stage);
        var radius = content.InnerDiameter * 0.5;
        var stress = ThinWallStress.Compute(target, radius, content.WallThickness).Value;
        return new StagePrediction(
            stage,
            stress,
            stress.Hoop > Pressure.Zero
            && MarginOfSafety
                .Compute(content.AllowableStress, stress.Hoop, 1)
                .TryGet(out var margin)
                ? margin
                : null,
            ElasticExpansion
                .Compute(
                    target,
                    Modulus,
                    PoissonRatio,
                    radius,
                    radius + content.WallThickness,
                    content.Volume
                )
                .TryGet(out var expansion)
                ? expansion
                : null
        );
    }

    /// <summary>The predicted burst; null when the design states no strength for it.</summary>
    /// <param name="content">Design that was checked.</param>
    public static CylinderBurst? Burst(DesignContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        return
            content.Pressures.Basis?.Wall is { } wall
            && CylinderBurst
                .Compute(
                    new BurstMaterial(
                        wall.Yield,
                        wall.Ultimate,
                        (double)wall.HardeningExponent,
                        (double)wall.WeldFactor
                    ),
                    content.InnerDiameter,
                    content.WallThickness
                )
                .TryGet(out var burst)
            ? burst
            : null;
    }
}
