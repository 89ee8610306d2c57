using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Vessels;

/// <summary>
/// How much pressure and volume a vessel holds for its weight: <c>p·V/W</c> with <c>W = m·g</c>, a length. Usual with the burst pressure; say
/// which pressure it is. Common practice, no source.
/// </summary>
public sealed record VesselPerformance : IWorked
{
    private const double Gravity = 9.80665;

    private VesselPerformance(Pressure pressure, Volume volume, Mass mass)
    {
        Factor = Length.FromMetres(
            pressure.Pascals * volume.CubicMetres / (mass.Kilograms * Gravity)
        );
        Working = Working
            .Of("Pressure and volume for the weight", "k = p·V/(m·g)")
            .Input("p", "pressure, gauge", pressure.Bar, "bar")
            .Input("V", "volume", volume.Litres, "l")
            .Input("m", "mass", mass.Kilograms, "kg")
            .Input("g", "acceleration of fall", Gravity, "m/s²")
            .Result("k", "pressure times volume over weight", Factor.Metres, "m")
            .From("Common practice, no source.")
            .Build();
    }

    /// <summary>The figure, a length.</summary>
    public Length Factor { get; }

    /// <inheritdoc/>
    public Working Working { get; }

    /// <summary>Computes the figure.</summary>
    /// <param name="pressure">Pressure, gauge, above zero; usually the burst pressure.</param>
    /// <param name="volume">Inner volume, above zero.</param>
    /// <param name="mass">Mass of the empty vessel, above zero.</param>
    public static Computed<VesselPerformance> Compute(
        Pressure pressure,
        Volume volume,
        Mass mass
    ) =>
        new InputCheck()
            .Positive("pressure", pressure.Bar, "bar")
            .Positive("volume", volume.Litres, "l")
            .Positive("mass", mass.Kilograms, "kg")
            .Compute(() => new VesselPerformance(pressure, volume, mass));
}
