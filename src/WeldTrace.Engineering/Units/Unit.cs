namespace WeldTrace.Engineering.Units;

/// <summary>A unit of measurement with its exact relation to the SI unit: SI value = (value + offset) × factor.</summary>
/// <param name="Symbol">Symbol as written for people, for instance <c>mm/min</c>.</param>
/// <param name="Dimension">Kind of quantity.</param>
/// <param name="Factor">SI value of one unit.</param>
/// <param name="Offset">Added to the number before the factor; only temperature scales have one.</param>
public sealed record Unit(string Symbol, Dimension Dimension, double Factor, double Offset = 0)
{
    /// <summary>SI value of a number in this unit.</summary>
    public double ToSi(double valueInThisUnit) => (valueInThisUnit + Offset) * Factor;

    /// <summary>Number in this unit of an SI value.</summary>
    public double FromSi(double valueInSi) => (valueInSi / Factor) - Offset;

    /// <summary>Converts a number of this unit into another unit of the same kind.</summary>
    /// <exception cref="ArgumentException">The units are of different kinds.</exception>
    public double To(Unit other, double valueInThisUnit)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Dimension != Dimension)
        {
            throw new ArgumentException(
                $"{Symbol} ({Dimension}) does not convert into {other.Symbol} ({other.Dimension}).",
                nameof(other)
            );
        }

        return ReferenceEquals(this, other) ? valueInThisUnit : other.FromSi(ToSi(valueInThisUnit));
    }
}
