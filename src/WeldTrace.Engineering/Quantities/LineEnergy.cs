using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>An energy per length of weld. Held in J/m; exact factors from NIST SP 811.</summary>
public readonly record struct LineEnergy : IQuantity<LineEnergy>, IComparable<LineEnergy>
{
    private LineEnergy(double value) => JoulesPerMetre = value;

    /// <summary>The value in J/m.</summary>
    public double JoulesPerMetre { get; }

    /// <summary>The value in joules per millimetre.</summary>
    public double JoulesPerMillimetre => JoulesPerMetre / 1e3;

    /// <inheritdoc/>
    public static string SiUnit => "J/m";

    /// <inheritdoc/>
    public double SiValue => JoulesPerMetre;

    /// <summary>Nothing: zero J/m.</summary>
    public static LineEnergy Zero => default;

    /// <inheritdoc/>
    public static LineEnergy FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from J/m.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static LineEnergy FromJoulesPerMetre(double value) => FromSi(value);

    /// <summary>Makes the quantity from joules per millimetre.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static LineEnergy FromJoulesPerMillimetre(double value) => FromSi(value * 1e3);

    /// <summary>Sum of two quantities.</summary>
    public static LineEnergy operator +(LineEnergy left, LineEnergy right) =>
        FromSi(left.JoulesPerMetre + right.JoulesPerMetre);

    /// <summary>Difference of two quantities.</summary>
    public static LineEnergy operator -(LineEnergy left, LineEnergy right) =>
        FromSi(left.JoulesPerMetre - right.JoulesPerMetre);

    /// <summary>The quantity times a plain number.</summary>
    public static LineEnergy operator *(LineEnergy left, double right) =>
        FromSi(left.JoulesPerMetre * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static LineEnergy operator /(LineEnergy left, double right) =>
        FromSi(left.JoulesPerMetre / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(LineEnergy left, LineEnergy right) =>
        Finite.Require(left.JoulesPerMetre / right.JoulesPerMetre);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(LineEnergy left, LineEnergy right) =>
        left.JoulesPerMetre < right.JoulesPerMetre;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(LineEnergy left, LineEnergy right) =>
        left.JoulesPerMetre > right.JoulesPerMetre;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(LineEnergy left, LineEnergy right) =>
        left.JoulesPerMetre <= right.JoulesPerMetre;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(LineEnergy left, LineEnergy right) =>
        left.JoulesPerMetre >= right.JoulesPerMetre;

    /// <inheritdoc/>
    public int CompareTo(LineEnergy other) => JoulesPerMetre.CompareTo(other.JoulesPerMetre);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{JoulesPerMetre:G9} J/m");
}
