using System.Globalization;

namespace WeldTrace.Engineering.Quantities;

/// <summary>The advance of the tool during one revolution of the spindle. Held in m; exact factors from NIST SP 811.</summary>
public readonly record struct WeldPitch : IQuantity<WeldPitch>, IComparable<WeldPitch>
{
    private WeldPitch(double value) => MetresPerRevolution = value;

    /// <summary>The value in m.</summary>
    public double MetresPerRevolution { get; }

    /// <summary>The value in millimetres per revolution.</summary>
    public double MillimetresPerRevolution => MetresPerRevolution / 1e-3;

    /// <summary>The value in inches per revolution.</summary>
    public double InchesPerRevolution => MetresPerRevolution / 0.0254;

    /// <inheritdoc/>
    public static string SiUnit => "m";

    /// <inheritdoc/>
    public double SiValue => MetresPerRevolution;

    /// <summary>Nothing: zero m.</summary>
    public static WeldPitch Zero => default;

    /// <inheritdoc/>
    public static WeldPitch FromSi(double value) => new(Finite.RequireSensible(value));

    /// <summary>Makes the quantity from m.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static WeldPitch FromMetresPerRevolution(double value) => FromSi(value);

    /// <summary>Makes the quantity from millimetres per revolution.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static WeldPitch FromMillimetresPerRevolution(double value) => FromSi(value * 1e-3);

    /// <summary>Makes the quantity from inches per revolution.</summary>
    /// <param name="value">Finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static WeldPitch FromInchesPerRevolution(double value) => FromSi(value * 0.0254);

    /// <summary>Sum of two quantities.</summary>
    public static WeldPitch operator +(WeldPitch left, WeldPitch right) =>
        FromSi(left.MetresPerRevolution + right.MetresPerRevolution);

    /// <summary>Difference of two quantities.</summary>
    public static WeldPitch operator -(WeldPitch left, WeldPitch right) =>
        FromSi(left.MetresPerRevolution - right.MetresPerRevolution);

    /// <summary>The quantity times a plain number.</summary>
    public static WeldPitch operator *(WeldPitch left, double right) =>
        FromSi(left.MetresPerRevolution * right);

    /// <summary>The quantity divided by a plain number other than zero.</summary>
    public static WeldPitch operator /(WeldPitch left, double right) =>
        FromSi(left.MetresPerRevolution / right);

    /// <summary>Ratio of two quantities of this kind; the right one is not zero.</summary>
    public static double operator /(WeldPitch left, WeldPitch right) =>
        Finite.Require(left.MetresPerRevolution / right.MetresPerRevolution);

    /// <summary>Whether the left quantity is less than the right one; not a judgement of acceptance.</summary>
    public static bool operator <(WeldPitch left, WeldPitch right) =>
        left.MetresPerRevolution < right.MetresPerRevolution;

    /// <summary>Whether the left quantity is greater than the right one; not a judgement of acceptance.</summary>
    public static bool operator >(WeldPitch left, WeldPitch right) =>
        left.MetresPerRevolution > right.MetresPerRevolution;

    /// <summary>Whether the left quantity is at most the right one; not a judgement of acceptance.</summary>
    public static bool operator <=(WeldPitch left, WeldPitch right) =>
        left.MetresPerRevolution <= right.MetresPerRevolution;

    /// <summary>Whether the left quantity is at least the right one; not a judgement of acceptance.</summary>
    public static bool operator >=(WeldPitch left, WeldPitch right) =>
        left.MetresPerRevolution >= right.MetresPerRevolution;

    /// <inheritdoc/>
    public int CompareTo(WeldPitch other) =>
        MetresPerRevolution.CompareTo(other.MetresPerRevolution);

    /// <summary>The value with its SI unit, culture independent.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{MetresPerRevolution:G9} m");
}
