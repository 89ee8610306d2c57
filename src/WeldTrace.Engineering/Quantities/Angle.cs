using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A plane angle, not reduced to one turn. Held in rad; exact factors from NIST SP 811.</summary>
public readonly record struct Angle : IQuantity<Angle>, IComparable<Angle>
{
    private Angle(double value) => Radians = value;

    /// <summary>The value in rad.</summary>
    public double Radians { get; }

    /// <summary>The value in degrees.</summary>
    public double Degrees => Radians / (Math.PI / 180);

    /// <inheritdoc/>
    public static string SiUnit => "rad";

    /// <inheritdoc/>
    public double SiValue => Radians;

    /// <summary>Nothing: zero rad.</summary>
    public static Angle Zero => default;

    /// <inheritdoc/>
    public static Angle FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from rad.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Angle FromRadians(double value) => FromSi(value);

    /// <summary>Makes the quantity from degrees.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Angle FromDegrees(double value) => FromSi(value * (Math.PI / 180));

    /// <summary>Sum of two quantities.</summary>
    public static Angle operator +(Angle left, Angle right) => FromSi(left.Radians + right.Radians);

    /// <summary>Difference of two quantities.</summary>
    public static Angle operator -(Angle left, Angle right) => FromSi(left.Radians - right.Radians);

    /// <summary>The quantity times a plain number.</summary>
    public static Angle operator *(Angle left, double right) => FromSi(left.Radians * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Angle operator /(Angle left, double right) => FromSi(left.Radians / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Angle left, Angle right) =>
        Finite.Require(left.Radians / right.Radians);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Angle left, Angle right) => left.Radians < right.Radians;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Angle left, Angle right) => left.Radians > right.Radians;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Angle left, Angle right) => left.Radians <= right.Radians;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Angle left, Angle right) => left.Radians >= right.Radians;

    /// <inheritdoc/>
    public int CompareTo(Angle other) => Radians.CompareTo(other.Radians);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Radians:G9} rad");
}
