using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A mass. Held in kg; exact factors from NIST SP 811.</summary>
public readonly record struct Mass : IQuantity<Mass>, IComparable<Mass>
{
    private Mass(double value) => Kilograms = value;

    /// <summary>The value in kg.</summary>
    public double Kilograms { get; }

    /// <summary>The value in pounds avoirdupois.</summary>
    public double Pounds => Kilograms / 0.45359237;

    /// <inheritdoc/>
    public static string SiUnit => "kg";

    /// <inheritdoc/>
    public double SiValue => Kilograms;

    /// <summary>Nothing: zero kg.</summary>
    public static Mass Zero => default;

    /// <inheritdoc/>
    public static Mass FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from kg.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Mass FromKilograms(double value) => FromSi(value);

    /// <summary>Makes the quantity from pounds avoirdupois.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Mass FromPounds(double value) => FromSi(value * 0.45359237);

    /// <summary>Sum of two quantities.</summary>
    public static Mass operator +(Mass left, Mass right) =>
        FromSi(left.Kilograms + right.Kilograms);

    /// <summary>Difference of two quantities.</summary>
    public static Mass operator -(Mass left, Mass right) =>
        FromSi(left.Kilograms - right.Kilograms);

    /// <summary>The quantity times a plain number.</summary>
    public static Mass operator *(Mass left, double right) => FromSi(left.Kilograms * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Mass operator /(Mass left, double right) => FromSi(left.Kilograms / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Mass left, Mass right) =>
        Finite.Require(left.Kilograms / right.Kilograms);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Mass left, Mass right) => left.Kilograms < right.Kilograms;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Mass left, Mass right) => left.Kilograms > right.Kilograms;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Mass left, Mass right) => left.Kilograms <= right.Kilograms;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Mass left, Mass right) => left.Kilograms >= right.Kilograms;

    /// <inheritdoc/>
    public int CompareTo(Mass other) => Kilograms.CompareTo(other.Kilograms);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Kilograms:G9} kg");
}
