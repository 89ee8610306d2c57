using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Web.Components.Figures;

/// <summary>A number with its unit, ready to be set.</summary>
public sealed record UnitText(string Number, string Unit)
{
    /// <summary>Number and unit with a no-break space between them.</summary>
    public override string ToString() => Unit is "°" ? Number + Unit : $"{Number}\u00a0{Unit}";

    /// <summary>The quantity in the units of the site.</summary>
    /// <typeparam name="TQuantity">One of the quantities of WeldTrace.Engineering.</typeparam>
    /// <exception cref="ArgumentException">The type has no unit on screen.</exception>
    public static UnitText For<TQuantity>(
        TQuantity quantity,
        UnitSystem system,
        int significant = 4,
        UnitScale scale = UnitScale.Usual
    )
        where TQuantity : struct, IQuantity<TQuantity>
    {
        var unit = SiteUnit.For<TQuantity>(system, scale);
        return new UnitText(
            SensibleDigits.Show(unit.FromSi(quantity.SiValue), significant),
            unit.Symbol
        );
    }

    /// <summary>A nominal quantity, such as a dimension of a drawing, without zeros at the end of its decimals.</summary>
    public static UnitText Nominal<TQuantity>(
        TQuantity quantity,
        UnitSystem system,
        UnitScale scale = UnitScale.Usual
    )
        where TQuantity : struct, IQuantity<TQuantity>
    {
        var unit = SiteUnit.For<TQuantity>(system, scale);
        return new UnitText(SensibleDigits.Nominal(unit.FromSi(quantity.SiValue)), unit.Symbol);
    }

    /// <summary>A quantity in the units of the site, for one whose type is known only at run time.</summary>
    /// <exception cref="ArgumentException">It is none of the quantities of WeldTrace.Engineering.</exception>
    public static UnitText Of(
        object quantity,
        UnitSystem system,
        int significant = 4,
        UnitScale scale = UnitScale.Usual
    ) =>
        quantity switch
        {
            Length length => For(length, system, significant, scale),
            Pressure pressure => For(pressure, system, significant, scale),
            Speed speed => For(speed, system, significant, scale),
            RotationSpeed rotation => For(rotation, system, significant, scale),
            WeldPitch pitch => For(pitch, system, significant, scale),
            Force force => For(force, system, significant, scale),
            Torque torque => For(torque, system, significant, scale),
            Temperature temperature => For(temperature, system, significant, scale),
            Angle angle => For(angle, system, significant, scale),
            Mass mass => For(mass, system, significant, scale),
            Volume volume => For(volume, system, significant, scale),
            Power power => For(power, system, significant, scale),
            Energy energy => For(energy, system, significant, scale),
            LineEnergy energy => For(energy, system, significant, scale),
            LeakRate rate => For(rate, system, significant, scale),
            _ => throw new ArgumentException($"{quantity.GetType().Name} has no unit on screen."),
        };
}
