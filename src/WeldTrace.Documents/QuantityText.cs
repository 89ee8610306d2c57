using System.Globalization;
using WeldTrace.Engineering.Paths;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents;

/// <summary>Typed quantities in the site's units, with sensible digits and a no-break space before the unit.</summary>
internal static class QuantityText
{
    public static string? Length(Length? length, UnitSystem units) =>
        length is not { } value ? null
        : units == UnitSystem.Metric ? Number(value.Millimetres, 2, "mm")
        : Number(value.Inches, 3, "in");

    /// <summary>Path lengths, which need fewer digits.</summary>
    public static string? Path(Length? length, UnitSystem units) =>
        length is not { } value ? null
        : units == UnitSystem.Metric ? Number(value.Millimetres, 1, "mm")
        : Number(value.Inches, 2, "in");

    /// <summary>Long distances, such as the life of a tool.</summary>
    public static string? Distance(Length? length, UnitSystem units) =>
        length is { } value
            ? Number(DistanceValue(value, units), 2, units == UnitSystem.Metric ? "m" : "ft")
            : null;

    /// <summary>In metres, or in feet of twelve inches.</summary>
    public static double DistanceValue(Length length, UnitSystem units) =>
        units == UnitSystem.Metric ? length.Metres : length.Inches / 12;

    public static string? Speed(Speed? speed, UnitSystem units) =>
        speed is not { } value ? null
        : units == UnitSystem.Metric ? Number(value.MillimetresPerMinute, 0, "mm/min")
        : Number(value.InchesPerMinute, 1, "in/min");

    public static string? Rotation(RotationSpeed? speed) =>
        speed is { } value ? Number(value.RevolutionsPerMinute, 0, "rev/min") : null;

    public static string? Pressure(Pressure? pressure, UnitSystem units) =>
        pressure is { } value
            ? Number(PressureValue(value, units), PressureDecimals(units), PressureUnit(units))
            : null;

    /// <summary>A pressure with the digits of a decay test.</summary>
    public static string FinePressure(Pressure pressure, UnitSystem units) =>
        Number(PressureValue(pressure, units), PressureDecimals(units) + 3, PressureUnit(units));

    public static string PressureUnit(UnitSystem units) =>
        units == UnitSystem.Metric ? "bar" : "psi";

    public static double PressureValue(Pressure pressure, UnitSystem units) =>
        units == UnitSystem.Metric ? pressure.Bar : pressure.PoundsPerSquareInch;

    public static string? Temperature(Temperature? temperature, UnitSystem units) =>
        temperature is not { } value ? null
        : units == UnitSystem.Metric ? Number(value.DegreesCelsius, 2, "°C")
        : Number(value.DegreesFahrenheit, 2, "°F");

    public static string Degrees(Angle angle) => Number(angle.Degrees, 1, "°");

    /// <summary>For instance <c>2 min 29 s</c>.</summary>
    public static string? Duration(TimeSpan? duration)
    {
        if (duration is not { } time)
        {
            return null;
        }

        var seconds = Math.Round(time.TotalSeconds, MidpointRounding.AwayFromZero);
        var whole = TimeSpan.FromSeconds(Math.Abs(seconds));
        var sign = seconds < 0 ? "−" : string.Empty;
        return whole switch
        {
            { TotalHours: >= 1 } => Invariant(
                $"{sign}{(long)whole.TotalHours}\u00A0h {whole.Minutes:00}\u00A0min {whole.Seconds:00}\u00A0s"
            ),
            { TotalMinutes: >= 1 } => Invariant(
                $"{sign}{whole.Minutes}\u00A0min {whole.Seconds:00}\u00A0s"
            ),
            _ => Invariant($"{sign}{whole.Seconds}\u00A0s"),
        };
    }

    /// <summary>Seconds of a log with one decimal.</summary>
    public static string Seconds(TimeSpan time) => Number(time.TotalSeconds, 1, "s");

    public static string Sense(RotationSense sense) =>
        sense == RotationSense.Clockwise ? "clockwise" : "counter-clockwise";

    public static string Side(WeldSide side) =>
        side == WeldSide.Advancing ? "advancing (AS)" : "retreating (RS)";

    private static int PressureDecimals(UnitSystem units) => units == UnitSystem.Metric ? 1 : 0;

    private static string Number(double value, int decimals, string unit)
    {
        var format = Invariant($"F{decimals}");
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        // Zero has no sign in print.
        var text = (rounded + 0.0).ToString(format, CultureInfo.InvariantCulture);
        text = text.Replace('-', '−');
        return unit == "°" ? $"{text}°" : $"{text}\u00A0{unit}";
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
