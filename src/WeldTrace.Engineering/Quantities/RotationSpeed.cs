using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A rotation speed without sense, counted in revolutions. Held in 1/s; exact factors from NIST SP 811.</summary>
public readonly record struct RotationSpeed : IQuantity<RotationSpeed>, IComparable<RotationSpeed>
{
    private RotationSpeed(double value) => RevolutionsPerSecond = value;

    /// <summary>The value in 1/s.</summary>
    public double RevolutionsPerSecond { get; }

    /// <summary>The value in revolutions per minute.</summary>
    public double RevolutionsPerMinute => RevolutionsPerSecond / (1.0 / 60);

    /// <summary>The value in radians per second.</summary>
    public double RadiansPerSecond => RevolutionsPerSecond / (1 / (2 * Math.PI));

    /// <inheritdoc/>
    public static string SiUnit => "1/s";

    /// <inheritdoc/>
    public double SiValue => RevolutionsPerSecond;

    /// <summary>Nothing: zero 1/s.</summary>
    public static RotationSpeed Zero => default;

    /// <inheritdoc/>
    public static RotationSpeed FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from 1/s.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static RotationSpeed FromRevolutionsPerSecond(double value) => FromSi(value);

    /// <summary>Makes the quantity from revolutions per minute.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static RotationSpeed FromRevolutionsPerMinute(double value) =>
        FromSi(value * (1.0 / 60));

    /// <summary>Makes the quantity from radians per second.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static RotationSpeed FromRadiansPerSecond(double value) =>
        FromSi(value * (1 / (2 * Math.PI)));

    /// <summary>Sum of two quantities.</summary>
    public static RotationSpeed operator +(RotationSpeed left, RotationSpeed right) =>
        FromSi(left.RevolutionsPerSecond + right.RevolutionsPerSecond);

    /// <summary>Difference of two quantities.</summary>
    public static RotationSpeed operator -(RotationSpeed left, RotationSpeed right) =>
        FromSi(left.RevolutionsPerSecond - right.RevolutionsPerSecond);

    /// <summary>The quantity times a plain number.</summary>
    public static RotationSpeed operator *(RotationSpeed left, double right) =>
        FromSi(left.RevolutionsPerSecond * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static RotationSpeed operator /(RotationSpeed left, double right) =>
        FromSi(left.RevolutionsPerSecond / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(RotationSpeed left, RotationSpeed right) =>
        Finite.Require(left.RevolutionsPerSecond / right.RevolutionsPerSecond);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(RotationSpeed left, RotationSpeed right) =>
        left.RevolutionsPerSecond < right.RevolutionsPerSecond;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(RotationSpeed left, RotationSpeed right) =>
        left.RevolutionsPerSecond > right.RevolutionsPerSecond;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(RotationSpeed left, RotationSpeed right) =>
        left.RevolutionsPerSecond <= right.RevolutionsPerSecond;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(RotationSpeed left, RotationSpeed right) =>
        left.RevolutionsPerSecond >= right.RevolutionsPerSecond;

    /// <inheritdoc/>
    public int CompareTo(RotationSpeed other) =>
        RevolutionsPerSecond.CompareTo(other.RevolutionsPerSecond);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{RevolutionsPerSecond:G9} 1/s");
}
