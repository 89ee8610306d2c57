using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// Membrane stresses of a thin closed cylinder and of a thin sphere of the same radius under inner pressure:
/// <c>σ_h = p·ri/t</c> (mean radius form <c>p·rm/t</c>), <c>σ_a = p·ri/(2t)</c>, sphere <c>p·ri/(2t)</c>, von Mises
/// <c>√3/2·p·ri/t</c>. Meant for t/ri up to 0.1 (bore stress about t/(2ri) low). Standard strength of materials.
/// </summary>
public sealed record ThinWallStress : IWorked
{
    /// <summary>Largest ratio of wall to inner radius for which the thin-wall forms are meant.</summary>
    public const double LargestRatio = 0.1;

    private ThinWallStress(Pressure inner, Length innerRadius, Length thickness)
    {
        Ratio = thickness / innerRadius;
        Hoop = inner / Ratio;
        HoopAtMeanRadius = inner * ((1 / Ratio) + 0.5);
        Axial = Hoop / 2;
        Sphere = Hoop / 2;
        VonMises = Hoop * (Math.Sqrt(3) / 2);
        Working = Show(inner, innerRadius, thickness);
    }

    /// <summary>Wall over inner radius.</summary>
    public double Ratio { get; }

    /// <summary>Hoop stress with the inner radius; the exact mean over the wall.</summary>
    public Pressure Hoop { get; }

    /// <summary>Hoop stress with the mean radius.</summary>
    public Pressure HoopAtMeanRadius { get; }

    /// <summary>Axial stress of the closed cylinder.</summary>
    public Pressure Axial { get; }

    /// <summary>Membrane stress of a sphere of the same inner radius and wall.</summary>
    public Pressure Sphere { get; }

    /// <summary>Von Mises stress of the closed cylinder, radial stress neglected.</summary>
    public Pressure VonMises { get; }

    /// <summary>Whether the wall is thin enough for these forms.</summary>
    public bool IsThin => Ratio <= LargestRatio;

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the stresses; outside the thin-wall range the working says so.</summary>
    /// <param name="inner">Inner gauge pressure, zero or more.</param>
    /// <param name="innerRadius">Inner radius, above zero.</param>
    /// <param name="thickness">Wall, above zero.</param>
    public static Computed<ThinWallStress> Compute(
        Pressure inner,
        Length innerRadius,
        Length thickness
    )
    {
        var check = new InputCheck()
            .NotNegative("inner pressure", inner.Megapascals, "MPa")
            .Positive("inner radius", innerRadius.Millimetres, "mm")
            .Positive("wall", thickness.Millimetres, "mm");
        return check.Compute(() => new ThinWallStress(inner, innerRadius, thickness));
    }

    private Working Show(Pressure inner, Length innerRadius, Length thickness) =>
        Working
            .Of(
                "Thin-wall stress",
                "σ_h = p·ri/t; σ_h,m = p·(ri + t/2)/t; σ_a = σ_h/2; sphere σ = p·ri/(2t); σ_v = √3/2·σ_h"
            )
            .Input("p", "inner gauge pressure", inner.Megapascals, "MPa")
            .Input("ri", "inner radius", innerRadius.Millimetres, "mm")
            .Input("t", "wall", thickness.Millimetres, "mm")
            .Step("t/ri", "wall over inner radius", Ratio)
            .Result("σ_h", "hoop stress", Hoop.Megapascals, "MPa")
            .Result("σ_h,m", "hoop stress at mean radius", HoopAtMeanRadius.Megapascals, "MPa")
            .Result("σ_a", "axial stress", Axial.Megapascals, "MPa")
            .Result("σ", "sphere of the same radius", Sphere.Megapascals, "MPa")
            .Result("σ_v", "von Mises stress", VonMises.Megapascals, "MPa")
            .From("Standard strength of materials; no bending at ends, nozzles or offsets.")
            .Validity(
                Validity.When(
                    IsThin,
                    $"t/ri is at most {Figures.Format(LargestRatio)}.",
                    "use the thick-wall stresses."
                )
            )
            .Build();
}
