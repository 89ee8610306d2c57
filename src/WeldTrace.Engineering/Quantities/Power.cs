using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A power. Held in W; exact factors from NIST SP 811.</summary>
public readonly record struct Power : IQuantity<Power>, IComparable<Power>
{
    private Power(double value) => Watts = value;

    /// <summary>The value in W.</summary>
    public double Watts { get; }

    /// <summary>The value in kilowatts.</summary>
    public double Kilowatts => Watts / 1e3;

    /// <inheritdoc/>
    public static string SiUnit => "W";

    /// <inheritdoc/>
    public double SiValue => Watts;

    /// <summary>Nothing: zero W.</summary>
    public static Power Zero => default;

    /// <inheritdoc/>
    public static Power FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from W.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Power FromWatts(double value) => FromSi(value);

    /// <summary>Makes the quantity from kilowatts.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Power FromKilowatts(double value) => FromSi(value * 1e3);

    /// <summary>Sum of two quantities.</summary>
    public static Power operator +(Power left, Power right) => FromSi(left.Watts + right.Watts);

    /// <summary>Difference of two quantities.</summary>
    public static Power operator -(Power left, Power right) => FromSi(left.Watts - right.Watts);

    /// <summary>The quantity times a plain number.</summary>
    public static Power operator *(Power left, double right) => FromSi(left.Watts * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Power operator /(Power left, double right) => FromSi(left.Watts / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Power left, Power right) =>
        Finite.Require(left.Watts / right.Watts);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Power left, Power right) => left.Watts < right.Watts;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Power left, Power right) => left.Watts > right.Watts;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Power left, Power right) => left.Watts <= right.Watts;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Power left, Power right) => left.Watts >= right.Watts;

    /// <inheritdoc/>
    public int CompareTo(Power other) => Watts.CompareTo(other.Watts);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Watts:G9} W");
}
