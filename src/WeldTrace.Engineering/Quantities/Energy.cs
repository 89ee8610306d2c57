using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>An energy. Held in J; exact factors from NIST SP 811.</summary>
public readonly record struct Energy : IQuantity<Energy>, IComparable<Energy>
{
    private Energy(double value) => Joules = value;

    /// <summary>The value in J.</summary>
    public double Joules { get; }

    /// <summary>The value in kilojoules.</summary>
    public double Kilojoules => Joules / 1e3;

    /// <inheritdoc/>
    public static string SiUnit => "J";

    /// <inheritdoc/>
    public double SiValue => Joules;

    /// <summary>Nothing: zero J.</summary>
    public static Energy Zero => default;

    /// <inheritdoc/>
    public static Energy FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from J.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Energy FromJoules(double value) => FromSi(value);

    /// <summary>Makes the quantity from kilojoules.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Energy FromKilojoules(double value) => FromSi(value * 1e3);

    /// <summary>Sum of two quantities.</summary>
    public static Energy operator +(Energy left, Energy right) =>
        FromSi(left.Joules + right.Joules);

    /// <summary>Difference of two quantities.</summary>
    public static Energy operator -(Energy left, Energy right) =>
        FromSi(left.Joules - right.Joules);

    /// <summary>The quantity times a plain number.</summary>
    public static Energy operator *(Energy left, double right) => FromSi(left.Joules * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Energy operator /(Energy left, double right) => FromSi(left.Joules / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Energy left, Energy right) =>
        Finite.Require(left.Joules / right.Joules);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Energy left, Energy right) => left.Joules < right.Joules;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Energy left, Energy right) => left.Joules > right.Joules;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Energy left, Energy right) => left.Joules <= right.Joules;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Energy left, Energy right) => left.Joules >= right.Joules;

    /// <inheritdoc/>
    public int CompareTo(Energy other) => Joules.CompareTo(other.Joules);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Joules:G9} J");
}
