namespace WeldTrace.Engineering.Quantities;

/// <summary>A physical quantity held in its coherent SI unit; always finite.</summary>
/// <typeparam name="TSelf">The quantity itself.</typeparam>
public interface IQuantity<TSelf>
    where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>Symbol of the SI unit in which <see cref="SiValue"/> is expressed, for instance <c>m</c>.</summary>
    static abstract string SiUnit { get; }

    /// <summary>The value in the unit <see cref="SiUnit"/>.</summary>
    double SiValue { get; }

    /// <summary>Makes the quantity from a value in <see cref="SiUnit"/>.</summary>
    /// <param name="value">Finite value in the SI unit.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or infinite.</exception>
    static abstract TSelf FromSi(double value);
}
