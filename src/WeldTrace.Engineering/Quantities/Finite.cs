using System.Runtime.CompilerServices;

namespace WeldTrace.Engineering.Quantities;

internal static class Finite
{
    /// <summary>Leaves room for every unit in which a quantity is shown, the finest of which is 10⁹ times smaller.</summary>
    private const double Largest = 1e290;

    public static double RequireSensible(
        double value,
        [CallerArgumentExpression(nameof(value))] string? name = null
    ) => Math.Abs(value) <= Largest ? value : throw new NotFiniteException(name, value);

    public static double Require(
        double value,
        [CallerArgumentExpression(nameof(value))] string? name = null
    ) => double.IsFinite(value) ? value : throw new NotFiniteException(name, value);
}

/// <summary>Arithmetic has left the range of numbers; a computation turns it into a refusal.</summary>
internal sealed class NotFiniteException(string? name, double value)
    : ArgumentOutOfRangeException(name, value, "The value must be a finite number.");
