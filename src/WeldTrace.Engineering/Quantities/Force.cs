using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A force. Held in N; exact factors from NIST SP 811.</summary>
public readonly record struct Force : IQuantity<Force>, IComparable<Force>
{
    private Force(double value) => Newtons = value;

    /// <summary>The value in N.</summary>
    public double Newtons { get; }

    /// <summary>The value in kilonewtons.</summary>
    public double Kilonewtons => Newtons / 1e3;

    /// <summary>The value in pounds-force; 0.45359237 kg x 9.80665 m/s2 exactly.</summary>
    public double PoundsForce => Newtons / 4.4482216152605;

    /// <inheritdoc/>
    public static string SiUnit => "N";

    /// <inheritdoc/>
    public double SiValue => Newtons;

    /// <summary>Nothing: zero N.</summary>
    public static Force Zero => default;

    /// <inheritdoc/>
    public static Force FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from N.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Force FromNewtons(double value) => FromSi(value);

    /// <summary>Makes the quantity from kilonewtons.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Force FromKilonewtons(double value) => FromSi(value * 1e3);

    /// <summary>Makes the quantity from pounds-force; 0.45359237 kg x 9.80665 m/s2 exactly.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Force FromPoundsForce(double value) => FromSi(value * 4.4482216152605);

    /// <summary>Sum of two quantities.</summary>
    public static Force operator +(Force left, Force right) => FromSi(left.Newtons + right.Newtons);

    /// <summary>Difference of two quantities.</summary>
    public static Force operator -(Force left, Force right) => FromSi(left.Newtons - right.Newtons);

    /// <summary>The quantity times a plain number.</summary>
    public static Force operator *(Force left, double right) => FromSi(left.Newtons * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Force operator /(Force left, double right) => FromSi(left.Newtons / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Force left, Force right) =>
        Finite.Require(left.Newtons / right.Newtons);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Force left, Force right) => left.Newtons < right.Newtons;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Force left, Force right) => left.Newtons > right.Newtons;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Force left, Force right) => left.Newtons <= right.Newtons;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Force left, Force right) => left.Newtons >= right.Newtons;

    /// <inheritdoc/>
    public int CompareTo(Force other) => Newtons.CompareTo(other.Newtons);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Newtons:G9} N");
}
