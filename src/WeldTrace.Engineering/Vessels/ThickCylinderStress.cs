using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Elastic stresses of a thick closed cylinder (Lamé): <c>σ_h = A + B/r²</c>, <c>σ_r = A − B/r²</c>, <c>σ_a = A</c>,
/// <c>A = (pi·ri² − po·ro²)/(ro² − ri²)</c>, <c>B = (pi − po)·ri²·ro²/(ro² − ri²)</c>. Standard strength of materials.
/// </summary>
public sealed record ThickCylinderStress : IWorked
{
    private readonly double _a;
    private readonly double _b;

    private ThickCylinderStress(
        Pressure inner,
        Pressure outer,
        Length innerRadius,
        Length outerRadius
    )
    {
        (InnerRadius, OuterRadius) = (innerRadius, outerRadius);
        var (ri2, ro2) = (Math.Pow(innerRadius.Metres, 2), Math.Pow(outerRadius.Metres, 2));
        _a = ((inner.Pascals * ri2) - (outer.Pascals * ro2)) / (ro2 - ri2);
        _b = (inner - outer).Pascals * ri2 * ro2 / (ro2 - ri2);
        Working = Show(inner, outer);
    }

    /// <summary>Inner radius.</summary>
    public Length InnerRadius { get; }

    /// <summary>Outer radius.</summary>
    public Length OuterRadius { get; }

    /// <summary>Axial stress of the closed cylinder, the same at every radius.</summary>
    public Pressure Axial => Pressure.FromPascals(_a);

    /// <summary>Mean hoop stress over the wall; equals p·ri/t for inner pressure alone.</summary>
    public Pressure MeanHoop =>
        Pressure.FromPascals(_a + (_b / (InnerRadius.Metres * OuterRadius.Metres)));

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the stresses.</summary>
    /// <param name="inner">Inner pressure, zero or more.</param>
    /// <param name="outer">Outer pressure on the same scale, zero or more.</param>
    /// <param name="innerRadius">Inner radius, above zero.</param>
    /// <param name="outerRadius">Outer radius, above the inner one.</param>
    public static Computed<ThickCylinderStress> Compute(
        Pressure inner,
        Pressure outer,
        Length innerRadius,
        Length outerRadius
    )
    {
        var check = new InputCheck()
            .NotNegative("inner pressure", inner.Megapascals, "MPa")
            .NotNegative("outer pressure", outer.Megapascals, "MPa")
            .Positive("inner radius", innerRadius.Millimetres, "mm")
            .Require(
                outerRadius > innerRadius,
                RefusalReason.OutOfRange,
                "outer radius",
                "It is not larger than the inner radius.",
                "Enter the outer radius, inner radius plus wall."
            );
        return check.Compute(() => new ThickCylinderStress(inner, outer, innerRadius, outerRadius));
    }

    /// <summary>Hoop stress at a radius inside the wall; radii outside it are moved to its surface.</summary>
    public Pressure HoopAt(Length radius) => Pressure.FromPascals(_a + Varying(radius));

    /// <summary>Radial stress at a radius inside the wall; radii outside it are moved to its surface.</summary>
    public Pressure RadialAt(Length radius) => Pressure.FromPascals(_a - Varying(radius));

    /// <summary>Von Mises stress at a radius inside the wall: √3·B/r².</summary>
    public Pressure VonMisesAt(Length radius) =>
        Pressure.FromPascals(Math.Sqrt(3) * Math.Abs(Varying(radius)));

    private double Varying(Length radius)
    {
        var r = Math.Clamp(radius.Metres, InnerRadius.Metres, OuterRadius.Metres);
        return _b / (r * r);
    }

    private Working Show(Pressure inner, Pressure outer) =>
        Working
            .Of(
                "Thick-wall stress, closed cylinder",
                "σ_h = A + B/r²; σ_r = A − B/r²; σ_a = A; σ_v = √3·B/r²"
            )
            .Input("pi", "inner pressure", inner.Megapascals, "MPa")
            .Input("po", "outer pressure", outer.Megapascals, "MPa")
            .Input("ri", "inner radius", InnerRadius.Millimetres, "mm")
            .Input("ro", "outer radius", OuterRadius.Millimetres, "mm")
            .Step("A", "constant part", _a / 1e6, "MPa")
            .Step("B", "varying part at the bore, B/ri²", Varying(InnerRadius) / 1e6, "MPa")
            .Result("σ_h", "hoop stress, bore", HoopAt(InnerRadius).Megapascals, "MPa")
            .Result("σ_h", "hoop stress, outside", HoopAt(OuterRadius).Megapascals, "MPa")
            .Result("σ_a", "axial stress", Axial.Megapascals, "MPa")
            .Result("σ_v", "von Mises stress, bore", VonMisesAt(InnerRadius).Megapascals, "MPa")
            .Result("σ_v", "von Mises stress, outside", VonMisesAt(OuterRadius).Megapascals, "MPa")
            .From("Lamé, elastic, closed ends; no bending at ends, nozzles or offsets.")
            .Build();
}
