using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A torque. Held in N.m; exact factors from NIST SP 811.</summary>
public readonly record struct Torque : IQuantity<Torque>, IComparable<Torque>
{
    private Torque(double value) => NewtonMetres = value;

    /// <summary>The value in N.m.</summary>
    public double NewtonMetres { get; }

    /// <summary>The value in foot pounds-force.</summary>
    public double FootPoundsForce => NewtonMetres / 1.3558179483314004;

    /// <inheritdoc/>
    public static string SiUnit => "N.m";

    /// <inheritdoc/>
    public double SiValue => NewtonMetres;

    /// <summary>Nothing: zero N.m.</summary>
    public static Torque Zero => default;

    /// <inheritdoc/>
    public static Torque FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from N.m.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Torque FromNewtonMetres(double value) => FromSi(value);

    /// <summary>Makes the quantity from foot pounds-force.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Torque FromFootPoundsForce(double value) => FromSi(value * 1.3558179483314004);

    /// <summary>Sum of two quantities.</summary>
    public static Torque operator +(Torque left, Torque right) =>
        FromSi(left.NewtonMetres + right.NewtonMetres);

    /// <summary>Difference of two quantities.</summary>
    public static Torque operator -(Torque left, Torque right) =>
        FromSi(left.NewtonMetres - right.NewtonMetres);

    /// <summary>The quantity times a plain number.</summary>
    public static Torque operator *(Torque left, double right) => FromSi(left.NewtonMetres * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Torque operator /(Torque left, double right) => FromSi(left.NewtonMetres / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Torque left, Torque right) =>
        Finite.Require(left.NewtonMetres / right.NewtonMetres);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Torque left, Torque right) =>
        left.NewtonMetres < right.NewtonMetres;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Torque left, Torque right) =>
        left.NewtonMetres > right.NewtonMetres;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Torque left, Torque right) =>
        left.NewtonMetres <= right.NewtonMetres;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Torque left, Torque right) =>
        left.NewtonMetres >= right.NewtonMetres;

    /// <inheritdoc/>
    public int CompareTo(Torque other) => NewtonMetres.CompareTo(other.NewtonMetres);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{NewtonMetres:G9} N.m");
}
