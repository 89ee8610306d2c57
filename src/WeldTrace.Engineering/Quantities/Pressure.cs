using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A pressure; whether gauge or absolute is said by the name of whatever holds it. Held in Pa; exact factors from NIST SP 811.</summary>
public readonly record struct Pressure : IQuantity<Pressure>, IComparable<Pressure>
{
    private Pressure(double value) => Pascals = value;

    /// <summary>The value in Pa.</summary>
    public double Pascals { get; }

    /// <summary>The value in bar.</summary>
    public double Bar => Pascals / 1e5;

    /// <summary>The value in megapascals.</summary>
    public double Megapascals => Pascals / 1e6;

    /// <summary>The value in millibar.</summary>
    public double Millibar => Pascals / 1e2;

    /// <summary>The value in pounds-force per square inch.</summary>
    public double PoundsPerSquareInch => Pascals / (4.4482216152605 / 0.00064516);

    /// <inheritdoc/>
    public static string SiUnit => "Pa";

    /// <inheritdoc/>
    public double SiValue => Pascals;

    /// <summary>Nothing: zero Pa.</summary>
    public static Pressure Zero => default;

    /// <inheritdoc/>
    public static Pressure FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from Pa.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Pressure FromPascals(double value) => FromSi(value);

    /// <summary>Makes the quantity from bar.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Pressure FromBar(double value) => FromSi(value * 1e5);

    /// <summary>Makes the quantity from megapascals.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Pressure FromMegapascals(double value) => FromSi(value * 1e6);

    /// <summary>Makes the quantity from millibar.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Pressure FromMillibar(double value) => FromSi(value * 1e2);

    /// <summary>Makes the quantity from pounds-force per square inch.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Pressure FromPoundsPerSquareInch(double value) =>
        FromSi(value * (4.4482216152605 / 0.00064516));

    /// <summary>Sum of two quantities.</summary>
    public static Pressure operator +(Pressure left, Pressure right) =>
        FromSi(left.Pascals + right.Pascals);

    /// <summary>Difference of two quantities.</summary>
    public static Pressure operator -(Pressure left, Pressure right) =>
        FromSi(left.Pascals - right.Pascals);

    /// <summary>The quantity times a plain number.</summary>
    public static Pressure operator *(Pressure left, double right) => FromSi(left.Pascals * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Pressure operator /(Pressure left, double right) => FromSi(left.Pascals / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Pressure left, Pressure right) =>
        Finite.Require(left.Pascals / right.Pascals);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Pressure left, Pressure right) => left.Pascals < right.Pascals;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Pressure left, Pressure right) => left.Pascals > right.Pascals;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Pressure left, Pressure right) => left.Pascals <= right.Pascals;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Pressure left, Pressure right) => left.Pascals >= right.Pascals;

    /// <inheritdoc/>
    public int CompareTo(Pressure other) => Pascals.CompareTo(other.Pascals);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Pascals:G9} Pa");
}
