using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A volume. Held in m3; exact factors from NIST SP 811.</summary>
public readonly record struct Volume : IQuantity<Volume>, IComparable<Volume>
{
    private Volume(double value) => CubicMetres = value;

    /// <summary>The value in m3.</summary>
    public double CubicMetres { get; }

    /// <summary>The value in litres.</summary>
    public double Litres => CubicMetres / 1e-3;

    /// <summary>The value in cubic centimetres.</summary>
    public double CubicCentimetres => CubicMetres / 1e-6;

    /// <summary>The value in cubic inches.</summary>
    public double CubicInches => CubicMetres / 1.6387064e-5;

    /// <inheritdoc/>
    public static string SiUnit => "m3";

    /// <inheritdoc/>
    public double SiValue => CubicMetres;

    /// <summary>Nothing: zero m3.</summary>
    public static Volume Zero => default;

    /// <inheritdoc/>
    public static Volume FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from m3.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Volume FromCubicMetres(double value) => FromSi(value);

    /// <summary>Makes the quantity from litres.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Volume FromLitres(double value) => FromSi(value * 1e-3);

    /// <summary>Makes the quantity from cubic centimetres.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Volume FromCubicCentimetres(double value) => FromSi(value * 1e-6);

    /// <summary>Makes the quantity from cubic inches.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Volume FromCubicInches(double value) => FromSi(value * 1.6387064e-5);

    /// <summary>Sum of two quantities.</summary>
    public static Volume operator +(Volume left, Volume right) =>
        FromSi(left.CubicMetres + right.CubicMetres);

    /// <summary>Difference of two quantities.</summary>
    public static Volume operator -(Volume left, Volume right) =>
        FromSi(left.CubicMetres - right.CubicMetres);

    /// <summary>The quantity times a plain number.</summary>
    public static Volume operator *(Volume left, double right) => FromSi(left.CubicMetres * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Volume operator /(Volume left, double right) => FromSi(left.CubicMetres / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Volume left, Volume right) =>
        Finite.Require(left.CubicMetres / right.CubicMetres);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Volume left, Volume right) =>
        left.CubicMetres < right.CubicMetres;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Volume left, Volume right) =>
        left.CubicMetres > right.CubicMetres;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Volume left, Volume right) =>
        left.CubicMetres <= right.CubicMetres;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Volume left, Volume right) =>
        left.CubicMetres >= right.CubicMetres;

    /// <inheritdoc/>
    public int CompareTo(Volume other) => CubicMetres.CompareTo(other.CubicMetres);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{CubicMetres:G9} m3");
}
