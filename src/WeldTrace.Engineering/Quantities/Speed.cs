using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>A linear speed. Held in m/s; exact factors from NIST SP 811.</summary>
public readonly record struct Speed : IQuantity<Speed>, IComparable<Speed>
{
    private Speed(double value) => MetresPerSecond = value;

    /// <summary>The value in m/s.</summary>
    public double MetresPerSecond { get; }

    /// <summary>The value in millimetres per minute.</summary>
    public double MillimetresPerMinute => MetresPerSecond / (1e-3 / 60);

    /// <summary>The value in millimetres per second.</summary>
    public double MillimetresPerSecond => MetresPerSecond / 1e-3;

    /// <summary>The value in inches per minute.</summary>
    public double InchesPerMinute => MetresPerSecond / (0.0254 / 60);

    /// <inheritdoc/>
    public static string SiUnit => "m/s";

    /// <inheritdoc/>
    public double SiValue => MetresPerSecond;

    /// <summary>Nothing: zero m/s.</summary>
    public static Speed Zero => default;

    /// <inheritdoc/>
    public static Speed FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from m/s.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Speed FromMetresPerSecond(double value) => FromSi(value);

    /// <summary>Makes the quantity from millimetres per minute.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Speed FromMillimetresPerMinute(double value) => FromSi(value * (1e-3 / 60));

    /// <summary>Makes the quantity from millimetres per second.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Speed FromMillimetresPerSecond(double value) => FromSi(value * 1e-3);

    /// <summary>Makes the quantity from inches per minute.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Speed FromInchesPerMinute(double value) => FromSi(value * (0.0254 / 60));

    /// <summary>Sum of two quantities.</summary>
    public static Speed operator +(Speed left, Speed right) =>
        FromSi(left.MetresPerSecond + right.MetresPerSecond);

    /// <summary>Difference of two quantities.</summary>
    public static Speed operator -(Speed left, Speed right) =>
        FromSi(left.MetresPerSecond - right.MetresPerSecond);

    /// <summary>The quantity times a plain number.</summary>
    public static Speed operator *(Speed left, double right) =>
        FromSi(left.MetresPerSecond * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static Speed operator /(Speed left, double right) =>
        FromSi(left.MetresPerSecond / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(Speed left, Speed right) =>
        Finite.Require(left.MetresPerSecond / right.MetresPerSecond);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(Speed left, Speed right) =>
        left.MetresPerSecond < right.MetresPerSecond;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(Speed left, Speed right) =>
        left.MetresPerSecond > right.MetresPerSecond;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(Speed left, Speed right) =>
        left.MetresPerSecond <= right.MetresPerSecond;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(Speed left, Speed right) =>
        left.MetresPerSecond >= right.MetresPerSecond;

    /// <inheritdoc/>
    public int CompareTo(Speed other) => MetresPerSecond.CompareTo(other.MetresPerSecond);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{MetresPerSecond:G9} m/s");
}
