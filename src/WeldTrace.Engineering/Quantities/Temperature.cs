using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A thermodynamic temperature, held in kelvin; 0 °C = 273.15 K exactly. Not a temperature difference.</summary>
public readonly record struct Temperature : IQuantity<Temperature>, IComparable<Temperature>
{
    private const double ZeroCelsius = 273.15;

    private Temperature(double value) => Kelvin = value;

    /// <summary>The value in kelvin, zero or more.</summary>
    public double Kelvin { get; }

    /// <summary>The value in degrees Celsius.</summary>
    public double DegreesCelsius => Kelvin - ZeroCelsius;

    /// <summary>The value in degrees Fahrenheit.</summary>
    public double DegreesFahrenheit => (DegreesCelsius * 9 / 5) + 32;

    /// <inheritdoc/>
    public static string SiUnit => "K";

    /// <inheritdoc/>
    public double SiValue => Kelvin;

    /// <summary>Makes a temperature from kelvin.</summary>
    /// <param name="value">Finite value, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN, infinite or below absolute zero.</exception>
    public static Temperature FromSi(double value) =>
        Finite.RequireSensible(value) >= 0
            ? new(value)
            : throw new ArgumentOutOfRangeException(nameof(value), value, "Below absolute zero.");

    /// <summary>Makes a temperature from kelvin; see <see cref="FromSi"/>.</summary>
    public static Temperature FromKelvin(double value) => FromSi(value);

    /// <summary>Makes a temperature from degrees Celsius, not below -273.15.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN, infinite or below absolute zero.</exception>
    public static Temperature FromDegreesCelsius(double value) => FromSi(value + ZeroCelsius);

    /// <summary>Makes a temperature from degrees Fahrenheit, not below -459.67.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN, infinite or below absolute zero.</exception>
    public static Temperature FromDegreesFahrenheit(double value) =>
        FromDegreesCelsius((value - 32) * 5 / 9);

    /// <summary>Whether the left temperature is lower.</summary>
    public static bool operator <(Temperature left, Temperature right) =>
        left.Kelvin < right.Kelvin;

    /// <summary>Whether the left temperature is higher.</summary>
    public static bool operator >(Temperature left, Temperature right) =>
        left.Kelvin > right.Kelvin;

    /// <summary>Whether the left temperature is at most the right one.</summary>
    public static bool operator <=(Temperature left, Temperature right) =>
        left.Kelvin <= right.Kelvin;

    /// <summary>Whether the left temperature is at least the right one.</summary>
    public static bool operator >=(Temperature left, Temperature right) =>
        left.Kelvin >= right.Kelvin;

    /// <inheritdoc/>
    public int CompareTo(Temperature other) => Kelvin.CompareTo(other.Kelvin);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Kelvin:G9} K");
}
