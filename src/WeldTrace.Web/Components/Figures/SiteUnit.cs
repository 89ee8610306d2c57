using System.Collections.Frozen;
using WeldTrace.Engineering.Quantities;
using WeldTrace.Engineering.Units;

namespace WeldTrace.Web.Components.Figures;

/// <summary>The unit in which a quantity is entered and shown at a site.</summary>
public static class SiteUnit
{
    private static readonly FrozenDictionary<
        (Type, UnitScale),
        (string Metric, string Inch)
    > Symbols = new Dictionary<(Type, UnitScale), (string, string)>
    {
        [(typeof(Length), UnitScale.Usual)] = ("mm", "in"),
        [(typeof(Length), UnitScale.Path)] = ("m", "ft"),
        [(typeof(Length), UnitScale.Fine)] = ("µm", "mil"),
        [(typeof(Pressure), UnitScale.Usual)] = ("bar", "psi"),
        [(typeof(Pressure), UnitScale.Fine)] = ("mbar", "psi"),
        [(typeof(Pressure), UnitScale.Stress)] = ("MPa", "psi"),
        [(typeof(Speed), UnitScale.Usual)] = ("mm/min", "in/min"),
        [(typeof(RotationSpeed), UnitScale.Usual)] = ("rev/min", "rev/min"),
        [(typeof(WeldPitch), UnitScale.Usual)] = ("mm/rev", "in/rev"),
        [(typeof(Force), UnitScale.Usual)] = ("kN", "lbf"),
        [(typeof(Torque), UnitScale.Usual)] = ("N·m", "lbf·ft"),
        [(typeof(Temperature), UnitScale.Usual)] = ("°C", "°F"),
        [(typeof(Angle), UnitScale.Usual)] = ("°", "°"),
        [(typeof(Mass), UnitScale.Usual)] = ("kg", "lb"),
        [(typeof(Volume), UnitScale.Usual)] = ("l", "in³"),
        [(typeof(Power), UnitScale.Usual)] = ("kW", "kW"),
        [(typeof(Energy), UnitScale.Usual)] = ("kJ", "ft·lbf"),
        [(typeof(LineEnergy), UnitScale.Usual)] = ("J/mm", "kJ/in"),
        [(typeof(LeakRate), UnitScale.Usual)] = ("Pa·m³/s", "atm·cm³/s"),
    }.ToFrozenDictionary();

    /// <summary>The unit; a scale that the quantity does not know means the usual one.</summary>
    /// <typeparam name="TQuantity">One of the quantities of WeldTrace.Engineering.</typeparam>
    /// <exception cref="ArgumentException">The type has no unit on screen.</exception>
    public static Unit For<TQuantity>(UnitSystem system, UnitScale scale = UnitScale.Usual)
        where TQuantity : struct, IQuantity<TQuantity>
    {
        if (
            !Symbols.TryGetValue((typeof(TQuantity), scale), out var pair)
            && !Symbols.TryGetValue((typeof(TQuantity), UnitScale.Usual), out pair)
        )
        {
            throw new ArgumentException($"{typeof(TQuantity).Name} has no unit on screen.");
        }

        return UnitCatalogue.Get(system == UnitSystem.InchPound ? pair.Inch : pair.Metric);
    }
}
