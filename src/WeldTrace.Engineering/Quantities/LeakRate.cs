using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A gas throughput; the temperature it refers to is said by whatever holds it. Held in Pa.m3/s; exact factors from NIST SP 811.</summary>
public readonly record struct LeakRate : IQuantity<LeakRate>, IComparable<LeakRate>
{
    private LeakRate(double value) => PascalCubicMetresPerSecond = value;

    /// <summary>The value in Pa.m3/s.</summary>
    public double PascalCubicMetresPerSecond { get; }

    /// <summary>The value in millibar litres per second.</summary>
    public double MillibarLitresPerSecond => PascalCubicMetresPerSecond / 0.1;

    /// <inheritdoc/>
    public static string SiUnit => "Pa.m3/s";

    /// <inheritdoc/>
    public double SiValue => PascalCubicMetresPerSecond;

    /// <summary>Nothing: zero Pa.m3/s.</summary>
    public static LeakRate Zero => default;

    /// <inheritdoc/>
    public static LeakRate FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from Pa.m3/s.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static LeakRate FromPascalCubicMetresPerSecond(double value) => FromSi(value);

    /// <summary>Makes the quantity from millibar litres per second.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static LeakRate FromMillibarLitresPerSecond(double value) => FromSi(value * 0.1);

    /// <summary>Sum of two quantities.</summary>
    public static LeakRate operator +(LeakRate left, LeakRate right) =>
        FromSi(left.PascalCubicMetresPerSecond + right.PascalCubicMetresPerSecond);

    /// <summary>Difference of two quantities.</summary>
    public static LeakRate operator -(LeakRate left, LeakRate right) =>
        FromSi(left.PascalCubicMetresPerSecond - right.PascalCubicMetresPerSecond);

    /// <summary>The quantity times a plain number.</summary>
    public static LeakRate operator *(LeakRate left, double right) =>
        FromSi(left.PascalCubicMetresPerSecond * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static LeakRate operator /(LeakRate left, double right) =>
        FromSi(left.PascalCubicMetresPerSecond / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(LeakRate left, LeakRate right) =>
        Finite.Require(left.PascalCubicMetresPerSecond / right.PascalCubicMetresPerSecond);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(LeakRate left, LeakRate right) =>
        left.PascalCubicMetresPerSecond < right.PascalCubicMetresPerSecond;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(LeakRate left, LeakRate right) =>
        left.PascalCubicMetresPerSecond > right.PascalCubicMetresPerSecond;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(LeakRate left, LeakRate right) =>
        left.PascalCubicMetresPerSecond <= right.PascalCubicMetresPerSecond;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(LeakRate left, LeakRate right) =>
        left.PascalCubicMetresPerSecond >= right.PascalCubicMetresPerSecond;

    /// <inheritdoc/>
    public int CompareTo(LeakRate other) =>
        PascalCubicMetresPerSecond.CompareTo(other.PascalCubicMetresPerSecond);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{PascalCubicMetresPerSecond:G9} Pa.m3/s");
}
