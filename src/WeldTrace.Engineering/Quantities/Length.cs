using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A length, or a signed distance. Held in m; exact factors from NIST SP 811.</summary>
public readonly record struct Length : IQuantity<Length>, IComparable<Length>
{
    private Length(double value) => Metres = value;

    /// <summary>The value in m.</summary>
    public double Metres { get; }

    /// <summary>The value in millimetres.</summary>
    public double Millimetres => Metres / 1e-3;

    /// <summary>The value in micrometres.</summary>
    public double Micrometres => Metres / 1e-6;

    /// <summary>The value in inches; 1 in = 25.4 mm exactly.</summary>
    public double Inches => Metres / 0.0254;

    /// <inheritdoc/>
    public static string SiUnit => "m";

    /// <inheritdoc/>
    public double SiValue => Metres;

    /// <summary>Nothing: zero m.</summary>
    public static Length Zero => default;

    /// <inheritdoc/>
    public static Length FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from m.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Length FromMetres(double value) => FromSi(value);

    /// <summary>Makes the quantity from millimetres.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Length FromMillimetres(double value) => FromSi(value * 1e-3);

    /// <summary>Makes the quantity from micrometres.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Length FromMicrometres(double value) => FromSi(value * 1e-6);

    /// <summary>Makes the quantity from inches; 1 in = 25.4 mm exactly.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Length FromInches(double value) => FromSi(value * 0.0254);

    /// <summary>Sum of two quantities.</summary>
    public static Length operator +(Length left, Length right) =>
        FromSi(left.Metres + right.Metres);

    /// <summary>Difference of two quantities.</summary>
    public static Length operator -(Length left, Length right) =>
        FromSi(left.Metres - right.Metres);

    /// <summary>The quantity times a plain number.</summary>
    public static Length operator *(Length left, double right) => FromSi(left.Metres * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Length operator /(Length left, double right) => FromSi(left.Metres / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Length left, Length right) =>
        Finite.Require(left.Metres / right.Metres);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Length left, Length right) => left.Metres < right.Metres;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Length left, Length right) => left.Metres > right.Metres;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Length left, Length right) => left.Metres <= right.Metres;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Length left, Length right) => left.Metres >= right.Metres;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Metres.CompareTo(other.Metres);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Metres:G9} m");
}
