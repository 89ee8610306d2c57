using WeldTrace.Engineering.Process;

namespace WeldTrace.Engineering.Materials;

/// <summary>A property for which there is no own type, with its source.</summary>
/// <param name="Value">The value in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="Evidence">Whether it was read.</param>
/// <param name="Source">Where.</param>
public sealed record SourcedNumber(double Value, string Unit, Evidence Evidence, string Source);

/// <summary>Thermal properties of an alloy, near room temperature; the conductivity of heat-treated tempers differs much.</summary>
/// <param name="Conductivity">In W/(m·K).</param>
/// <param name="Density">In kg/m³.</param>
/// <param name="HeatCapacity">In J/(kg·K).</param>
public sealed record AlloyThermal(
    SourcedNumber Conductivity,
    SourcedNumber Density,
    SourcedNumber HeatCapacity
)
{
    /// <summary>The properties as a temperature field takes them.</summary>
    public ThermalMaterial Material => new(Conductivity.Value, Density.Value, HeatCapacity.Value);
}
