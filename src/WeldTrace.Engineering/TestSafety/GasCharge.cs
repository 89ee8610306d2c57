using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.TestSafety;

/// <summary>Compressed gas in a vessel.</summary>
/// <param name="Absolute">Absolute pressure, above the atmosphere.</param>
/// <param name="Atmosphere">Absolute pressure around it, above zero.</param>
/// <param name="Volume">Whole volume under pressure, above zero; long pipes with 8 diameters.</param>
/// <param name="HeatRatio">Ratio of specific heats, above 1; 1.4 for air and nitrogen, 1.667 for helium.</param>
public sealed record GasCharge(
    Pressure Absolute,
    Pressure Atmosphere,
    Volume Volume,
    double HeatRatio = GasCharge.Diatomic
)
{
    /// <summary>Ratio of specific heats of air and nitrogen.</summary>
    public const double Diatomic = 1.4;
}
