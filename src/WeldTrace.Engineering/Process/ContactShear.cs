using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Engineering.Process;

/// <summary>
/// Shear stress between tool and work. Yield stress at the process temperature, not at room temperature, which would give
/// several times too much. Forms of Schmidt, Hattel, Wert 2004 (from memory).
/// </summary>
public static class ContactShear
{
    /// <summary>Sticking contact after von Mises: σ_y/√3.</summary>
    /// <param name="yieldWhenHot">Yield stress at the process temperature, zero or more.</param>
    public static Pressure Sticking(Pressure yieldWhenHot) => yieldWhenHot / Math.Sqrt(3);

    /// <summary>Sticking contact after Tresca: σ_y/2.</summary>
    /// <param name="yieldWhenHot">Yield stress at the process temperature, zero or more.</param>
    public static Pressure StickingTresca(Pressure yieldWhenHot) => yieldWhenHot / 2;

    /// <summary>Sliding contact: µ·F/(π·Rs²).</summary>
    /// <param name="friction">Coefficient of friction, a plain number, zero or more.</param>
    /// <param name="axialForce">Axial (forge) force.</param>
    /// <param name="shoulderRadius">Shoulder radius, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The radius is not above zero.</exception>
    public static Pressure Sliding(double friction, Force axialForce, Length shoulderRadius)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(
            shoulderRadius.Metres,
            nameof(shoulderRadius)
        );
        return Pressure.FromPascals(
            friction * axialForce.Newtons / (Math.PI * Math.Pow(shoulderRadius.Metres, 2))
        );
    }
}
