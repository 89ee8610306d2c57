using MathNet.Numerics;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Process;

/// <summary>A place near a moving heat source.</summary>
/// <param name="Ahead">Distance ahead of the source in the direction of travel; negative behind it.</param>
/// <param name="Aside">Distance beside the line of travel.</param>
/// <param name="Below">Depth below the surface.</param>
public readonly record struct SourceOffset(Length Ahead, Length Aside, Length Below);

/// <summary>
/// Temperature rise about a steadily moving source (Rosenthal 1946, from memory): thick plate <c>Q/(2πkR)·exp(−v(ξ + R)/(2a))</c>, thin
/// plate <c>Q/(2πkh)·exp(−vξ/(2a))·K0(vr/(2a))</c>, finite thickness by mirrored point sources. Constant properties, no latent
/// heat, no tool radius: refused inside the shoulder. For plates of 5 to 10 mm the thin form is right beyond one thickness.
/// </summary>
public sealed record MovingSource : IWorked
{
    private const int LargestImageCount = 100_000;

    private readonly double _halfRate;
    private readonly double _scale;

    private MovingSource(
        Power heat,
        Speed travel,
        ThermalMaterial material,
        Length thickness,
        SourceOffset place
    )
    {
        _halfRate = travel.MetresPerSecond / (2 * material.SquareMetresPerSecond);
        _scale = heat.Watts / (2 * Math.PI * material.WattsPerMetreKelvin);
        ImageCount = Images(travel, material, thickness);
        ThickKelvin = PointSource(place, 0);
        ThinKelvin = LineSource(place, thickness);
        FiniteKelvin = Enumerable
            .Range(-ImageCount, (2 * ImageCount) + 1)
            .Sum(i => PointSource(place, 2 * i * thickness.Metres));
        Working = Show(heat, travel, material, thickness, place);
    }

    /// <summary>Rise in kelvin in a very thick plate.</summary>
    public double ThickKelvin { get; }

    /// <summary>Rise in kelvin in a thin plate, uniform through its thickness.</summary>
    public double ThinKelvin { get; }

    /// <summary>Rise in kelvin in a plate of the given thickness.</summary>
    public double FiniteKelvin { get; }

    /// <summary>Mirrored sources on each side that were summed.</summary>
    public int ImageCount { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the rise at a place.</summary>
    /// <param name="heat">Heat into the work, above zero.</param>
    /// <param name="travel">Travel speed, above zero.</param>
    /// <param name="material">Thermal properties.</param>
    /// <param name="thickness">Plate thickness, above zero.</param>
    /// <param name="place">Where, outside the shoulder.</param>
    /// <param name="shoulderRadius">Shoulder radius, above zero.</param>
    public static Computed<MovingSource> Compute(
        Power heat,
        Speed travel,
        ThermalMaterial material,
        Length thickness,
        SourceOffset place,
        Length shoulderRadius
    )
    {
        ArgumentNullException.ThrowIfNull(material);
        var check = new InputCheck()
            .Positive("heat", heat.Watts, "W")
            .Positive("travel speed", travel.MillimetresPerMinute, "mm/min")
            .Positive("thermal conductivity", material.WattsPerMetreKelvin, "W/(m·K)")
            .Positive("density", material.KilogramsPerCubicMetre, "kg/m³")
            .Positive("specific heat", material.JoulesPerKilogramKelvin, "J/(kg·K)")
            .Positive("thickness", thickness.Millimetres, "mm")
            .Positive("shoulder radius", shoulderRadius.Millimetres, "mm");
        if (check.IsClean)
        {
            CheckPlace(check, travel, material, thickness, place, shoulderRadius);
        }

        return check.Compute(() => new MovingSource(heat, travel, material, thickness, place));
    }

    /// <summary>Peak rise in kelvin beside a fast source in a thin plate: q/(ρ·cp·h·y·√(2πe)).</summary>
    /// <param name="energy">Line energy that reaches the work.</param>
    /// <param name="material">Thermal properties.</param>
    /// <param name="thickness">Plate thickness, above zero.</param>
    /// <param name="aside">Distance beside the line, above zero.</param>
    public static double PeakKelvin(
        LineEnergy energy,
        ThermalMaterial material,
        Length thickness,
        Length aside
    )
    {
        ArgumentNullException.ThrowIfNull(material);
        var heatCapacity = material.KilogramsPerCubicMetre * material.JoulesPerKilogramKelvin;
        return Finite.Require(
            energy.JoulesPerMetre / (heatCapacity * thickness.Metres * aside.Metres * PeakConstant)
        );
    }

    /// <summary>The number √(2πe), often printed as 4.13.</summary>
    public static double PeakConstant { get; } = Math.Sqrt(2 * Math.PI * Math.E);

    private static void CheckPlace(
        InputCheck check,
        Speed travel,
        ThermalMaterial material,
        Length thickness,
        SourceOffset place,
        Length shoulderRadius
    ) =>
        check
            .Require(
                Math.Sqrt(Square(place.Ahead) + Square(place.Aside)) > shoulderRadius.Metres,
                RefusalReason.OutsideValidity,
                "place",
                "It lies inside the shoulder, where the source is no point.",
                "Choose a place outside the shoulder radius."
            )
            .Require(
                Images(travel, material, thickness) <= LargestImageCount,
                RefusalReason.OutsideValidity,
                "travel speed",
                "It is so slow that the heat does not stay behind the tool.",
                "Choose a higher travel speed."
            );

    /// <summary>Enough mirrored sources when N·h·v/a exceeds 35; doubled for the slow tail.</summary>
    private static int Images(Speed travel, ThermalMaterial material, Length thickness) =>
        (int)
            Math.Min(
                Math.Ceiling(
                    70
                        * material.SquareMetresPerSecond
                        / (thickness.Metres * travel.MetresPerSecond)
                ),
                LargestImageCount + 1.0
            );

    private static double Square(Length length) => length.Metres * length.Metres;

    private double PointSource(SourceOffset place, double mirror)
    {
        var depth = place.Below.Metres - mirror;
        var distance = Math.Sqrt(Square(place.Ahead) + Square(place.Aside) + (depth * depth));
        return _scale / distance * Math.Exp(-_halfRate * (place.Ahead.Metres + distance));
    }

    private double LineSource(SourceOffset place, Length thickness)
    {
        var distance = Math.Sqrt(Square(place.Ahead) + Square(place.Aside));
        return _scale
            / thickness.Metres
            * Math.Exp(-_halfRate * place.Ahead.Metres)
            * SpecialFunctions.BesselK0(_halfRate * distance);
    }

    private Working Show(
        Power heat,
        Speed travel,
        ThermalMaterial material,
        Length thickness,
        SourceOffset place
    ) =>
        Working
            .Of(
                "Temperature rise about the moving tool",
                "thick: Q/(2πkR)·exp(−v(ξ + R)/(2a)); thin: Q/(2πkh)·exp(−vξ/(2a))·K0(vr/(2a)); finite: Σ of mirrored sources"
            )
            .Input("Q", "heat into the work", heat.Watts, "W")
            .Input("v", "travel speed", travel.MillimetresPerMinute, "mm/min")
            .Input("k", "thermal conductivity", material.WattsPerMetreKelvin, "W/(m·K)")
            .Input("h", "plate thickness", thickness.Millimetres, "mm")
            .Input("ξ", "distance ahead", place.Ahead.Millimetres, "mm")
            .Input("y", "distance aside", place.Aside.Millimetres, "mm")
            .Input("z", "depth", place.Below.Millimetres, "mm")
            .Step("a", "thermal diffusivity", material.SquareMetresPerSecond, "m²/s")
            .Step("N", "mirrored sources on each side", ImageCount)
            .Result("ΔT", "rise, thick plate", ThickKelvin, "K")
            .Result("ΔT", "rise, thin plate", ThinKelvin, "K")
            .Result("ΔT", "rise, finite thickness", FiniteKelvin, "K")
            .From(
                "Rosenthal 1946 (from memory); constant properties, no latent heat, outside the shoulder only."
            )
            .Build();
}
