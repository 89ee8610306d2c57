using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Elastic stresses of a thick sphere under inner pressure: <c>σ_t = C·(1 + ro³/(2r³))</c>, <c>σ_r = C·(1 − ro³/r³)</c>,
/// <c>C = p·ri³/(ro³ − ri³)</c>. Standard strength of materials.
/// </summary>
public sealed record ThickSphereStress : IWorked
{
    private readonly double _c;

    private ThickSphereStress(Pressure inner, Length innerRadius, Length outerRadius)
    {
        (InnerRadius, OuterRadius) = (innerRadius, outerRadius);
        var (ri3, ro3) = (Math.Pow(innerRadius.Metres, 3), Math.Pow(outerRadius.Metres, 3));
        _c = inner.Pascals * ri3 / (ro3 - ri3);
        Working = Show(inner);
    }

    /// <summary>Inner radius.</summary>
    public Length InnerRadius { get; }

    /// <summary>Outer radius.</summary>
    public Length OuterRadius { get; }

    /// <summary>Force carried by the tangential stress over the cut through the centre; balances p·π·ri².</summary>
    public Force CutForce
    {
        get
        {
            double Primitive(double r) => (r * r / 2) - (Math.Pow(OuterRadius.Metres, 3) / (2 * r));
            var integral = Primitive(OuterRadius.Metres) - Primitive(InnerRadius.Metres);
            return Force.FromNewtons(2 * Math.PI * _c * integral);
        }
    }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the stresses.</summary>
    /// <param name="inner">Inner gauge pressure, zero or more.</param>
    /// <param name="innerRadius">Inner radius, above zero.</param>
    /// <param name="outerRadius">Outer radius, above the inner one.</param>
    public static Computed<ThickSphereStress> Compute(
        Pressure inner,
        Length innerRadius,
        Length outerRadius
    )
    {
        var check = new InputCheck()
            .NotNegative("inner pressure", inner.Megapascals, "MPa")
            .Positive("inner radius", innerRadius.Millimetres, "mm")
            .Require(
                outerRadius > innerRadius,
                RefusalReason.OutOfRange,
                "outer radius",
                "It is not larger than the inner radius.",
                "Enter the outer radius, inner radius plus wall."
            );
        return check.Compute(() => new ThickSphereStress(inner, innerRadius, outerRadius));
    }

    /// <summary>Tangential stress at a radius inside the wall; radii outside it are moved to its surface.</summary>
    public Pressure TangentialAt(Length radius) =>
        Pressure.FromPascals(_c * (1 + (Cubes(radius) / 2)));

    /// <summary>Radial stress at a radius inside the wall.</summary>
    public Pressure RadialAt(Length radius) => Pressure.FromPascals(_c * (1 - Cubes(radius)));

    /// <summary>Von Mises stress at a radius inside the wall: the difference of tangential and radial stress.</summary>
    public Pressure VonMisesAt(Length radius) => TangentialAt(radius) - RadialAt(radius);

    private double Cubes(Length radius)
    {
        var r = Math.Clamp(radius.Metres, InnerRadius.Metres, OuterRadius.Metres);
        return Math.Pow(OuterRadius.Metres / r, 3);
    }

    private Working Show(Pressure inner) =>
        Working
            .Of(
                "Thick-wall stress, sphere",
                "σ_t = C·(1 + ro³/(2r³)); σ_r = C·(1 − ro³/r³); C = p·ri³/(ro³ − ri³)"
            )
            .Input("p", "inner gauge pressure", inner.Megapascals, "MPa")
            .Input("ri", "inner radius", InnerRadius.Millimetres, "mm")
            .Input("ro", "outer radius", OuterRadius.Millimetres, "mm")
            .Step("C", "constant", _c / 1e6, "MPa")
            .Result("σ_t", "tangential stress, bore", TangentialAt(InnerRadius).Megapascals, "MPa")
            .Result(
                "σ_t",
                "tangential stress, outside",
                TangentialAt(OuterRadius).Megapascals,
                "MPa"
            )
            .Result("σ_v", "von Mises stress, bore", VonMisesAt(InnerRadius).Megapascals, "MPa")
            .From("Lamé, elastic; no bending at nozzles or offsets.")
            .Build();
}
