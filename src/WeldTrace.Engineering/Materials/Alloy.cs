using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Materials;

/// <summary>How well a figure is founded.</summary>
public enum Evidence
{
    /// <summary>Read in a public source, which is named.</summary>
    Read,

    /// <summary>From general knowledge; read a source before it decides anything.</summary>
    FromMemory,
}

/// <summary>A property with its source.</summary>
/// <typeparam name="T">Kind of quantity.</typeparam>
/// <param name="Value">The value.</param>
/// <param name="Evidence">Whether it was read.</param>
/// <param name="Source">Where.</param>
public sealed record Sourced<T>(T Value, Evidence Evidence, string Source)
    where T : struct, IQuantity<T>;

/// <summary>An aluminium alloy with the properties known here; null where nothing trustworthy was found.</summary>
/// <param name="Designation">Four-digit designation, with temper where the strength depends on it.</param>
/// <param name="Solidus">Begin of melting; eutectics can melt lower.</param>
/// <param name="Liquidus">End of melting.</param>
/// <param name="TypicalUltimate">Typical ultimate strength; for plausibility only.</param>
/// <param name="MinimumUltimate">Minimum ultimate strength of the named rule.</param>
/// <param name="MinimumYield">Minimum yield strength of the named rule.</param>
/// <param name="TypicalYield">Typical yield strength; for plausibility only.</param>
/// <param name="Thermal">Conductivity, density and heat capacity.</param>
public sealed record Alloy(
    string Designation,
    Sourced<Temperature>? Solidus = null,
    Sourced<Temperature>? Liquidus = null,
    Sourced<Pressure>? TypicalUltimate = null,
    Sourced<Pressure>? MinimumUltimate = null,
    Sourced<Pressure>? MinimumYield = null,
    Sourced<Pressure>? TypicalYield = null,
    AlloyThermal? Thermal = null
);
