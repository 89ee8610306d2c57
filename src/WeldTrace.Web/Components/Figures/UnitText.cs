using WeldTrace.Documents;
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
        var (value, unit) = Convert(quantity, system == UnitSystem.InchPound, scale);
        return new UnitText(SensibleDigits.Show(value, significant), unit);
    }

    private static (double Value, string Unit) Convert(
        object quantity,
        bool inch,
        UnitScale scale
    ) =>
        quantity switch
        {
            Length length => OfLength(length, inch, scale),
            Pressure pressure => OfPressure(pressure, inch, scale),
            Speed speed => inch
                ? (speed.InchesPerMinute, "in/min")
                : (speed.MillimetresPerMinute, "mm/min"),
            RotationSpeed speed => (speed.RevolutionsPerMinute, "rev/min"),
            WeldPitch pitch => inch
                ? (pitch.InchesPerRevolution, "in/rev")
                : (pitch.MillimetresPerRevolution, "mm/rev"),
            Force force => inch ? (force.PoundsForce, "lbf") : (force.Kilonewtons, "kN"),
            Torque torque => inch
                ? (torque.FootPoundsForce, "ft·lbf")
                : (torque.NewtonMetres, "N·m"),
            Temperature temperature => inch
                ? (temperature.DegreesFahrenheit, "°F")
                : (temperature.DegreesCelsius, "°C"),
            Angle angle => (angle.Degrees, "°"),
            Mass mass => inch ? (mass.Pounds, "lb") : (mass.Kilograms, "kg"),
            Volume volume => inch ? (volume.CubicInches, "in³") : (volume.Litres, "L"),
            Power power => (power.Kilowatts, "kW"),
            Energy energy => (energy.Kilojoules, "kJ"),
            LineEnergy energy => (energy.JoulesPerMillimetre, "J/mm"),
            LeakRate rate => (rate.PascalCubicMetresPerSecond, "Pa·m³/s"),
            _ => throw new ArgumentException($"{quantity.GetType().Name} has no unit on screen."),
        };

    private static (double, string) OfLength(Length length, bool inch, UnitScale scale) =>
        (inch, scale) switch
        {
            (false, UnitScale.Path) => (length.Metres, "m"),
            (true, UnitScale.Path) => (length.Inches / 12, "ft"),
            (false, UnitScale.Fine) => (length.Micrometres, "µm"),
            (true, UnitScale.Fine) => (length.Inches * 1000, "mil"),
            (false, _) => (length.Millimetres, "mm"),
            (true, _) => (length.Inches, "in"),
        };

    private static (double, string) OfPressure(Pressure pressure, bool inch, UnitScale scale) =>
        (inch, scale) switch
        {
            (true, _) => (pressure.PoundsPerSquareInch, "psi"),
            (false, UnitScale.Stress) => (pressure.Megapascals, "MPa"),
            (false, UnitScale.Fine) => (pressure.Millibar, "mbar"),
            (false, _) => (pressure.Bar, "bar"),
        };
}
