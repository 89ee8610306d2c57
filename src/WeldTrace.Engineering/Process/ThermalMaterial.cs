namespace WeldTrace.Engineering.Process;

/// <summary>Constant thermal properties of the work.</summary>
/// <param name="WattsPerMetreKelvin">Thermal conductivity in W/(m·K), above zero.</param>
/// <param name="KilogramsPerCubicMetre">Density in kg/m³, above zero.</param>
/// <param name="JoulesPerKilogramKelvin">Specific heat in J/(kg·K), above zero.</param>
public sealed record ThermalMaterial(
    double WattsPerMetreKelvin,
    double KilogramsPerCubicMetre,
    double JoulesPerKilogramKelvin
)
{
    /// <summary>Thermal diffusivity k/(ρ·cp) in m²/s.</summary>
    public double SquareMetresPerSecond =>
        WattsPerMetreKelvin / (KilogramsPerCubicMetre * JoulesPerKilogramKelvin);
}
